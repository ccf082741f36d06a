import { describe, expect, it } from 'vitest';
import type { OvernightAnswer, OvernightQuestion } from '../../../src/tracker/bench/index.ts';
import {
  beforeYouGo,
  duesTill,
  questionsFor,
  ragsFrom,
} from '../../../src/tracker/overnight/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import {
  afternoon,
  at,
  barred,
  bleach,
  Facts,
  pot,
  product,
  recoat,
  sense,
  step,
  tense,
} from '../../views/support/bench-of.ts';

const evening = at('24 18:05');
const morning = at('25 07:30');

describe('what falls due overnight', () => {
  const told = (facts: Facts, from: number, till: number | null) =>
    duesTill(facts.bench(), from, till, sense).map(
      ({ piece, at: when, loss, ends, begins }) =>
        `${piece?.name} ${new Date(when).toISOString().slice(8, 16)} ${ends.meaning} > ${begins.meaning}, ${loss}`,
    );

  it('is every edge till the morning, what costs something first, then by time', () => {
    expect(told(afternoon(), evening, morning)).toEqual([
      'Plant stand 24T18:30 go > go after work, costs work',
      'Beech stool 24T23:00 go > go after work, costs work',
    ]);
    expect(told(afternoon(), at('24 14:29'), at('25 09:00'))).toEqual([
      'Plant stand 24T18:30 go > go after work, costs work',
      'Beech stool 24T23:00 go > go after work, costs work',
      'Beech stool 24T15:10 wait > go, costs nothing',
      'Side table 24T15:20 wait > go, costs nothing',
      'Garden bench 25T08:55 keep off > go, costs nothing',
    ]);
  });

  it('is also what falls at the very minute at which somebody is back', () => {
    const at2300 = 'Beech stool 24T23:00 go > go after work, costs work';
    expect(told(afternoon(), evening, at('24 23:00'))).toContain(at2300);
    expect(told(afternoon(), evening, at('24 22:59'))).not.toContain(at2300);
  });

  it('counts the wait of a gap that begins as a loss, also where the label puts no work on it', () => {
    const stretches = barred.stretches.map((each) => ({ ...each, loss: 'costs nothing' as const }));
    const facts = new Facts()
      .piece('24 09:00', 5, 'Garden bench', [
        step('coat', 'pass', { windows: [{ ...barred, stretches }] }),
        step('next', 'next pass', { needs: ['recoat'] }),
      ])
      .stamp('24 17:50', 5, 'coat', 'first-stroke')
      .done('24 18:00', 5, 'coat');
    expect(told(facts, evening, morning)).toEqual([
      'Garden bench 24T18:50 go > keep off, costs work',
    ]);
  });

  it('is in order of what is lost, not of the clock', () => {
    const [first, ...rest] = told(tense(), at('12-03 16:31'), null);
    expect(first).toBe('Wall shelf 03T16:42 go > late, spoils');
    expect(rest).toContain('Wall shelf 03T16:40 wait > go, costs nothing');
  });

  it('counts a forbidden gap that begins as a loss of the wait', () => {
    const facts = new Facts()
      .piece('24 09:00', 5, 'Garden bench', [
        step('coat', 'pass', { windows: [barred] }),
        step('next', 'next pass', { needs: ['recoat'] }),
      ])
      .done('24 18:00', 5, 'coat');
    expect(told(facts, evening, morning)).toEqual([
      'Garden bench 24T19:00 go > keep off, costs work',
    ]);
  });

  it('leaves out what lies beyond the morning, and goes on for ever when asked to', () => {
    const cure = told(afternoon(), evening, null).at(-1);
    expect(cure).toBe('Walnut tray 14T12:30 wait > go, costs nothing');
    expect(told(afternoon(), evening, evening)).toEqual([]);
  });

  it('names one of several milestones that open at once', () => {
    const rule = recoat(2 * hour, null);
    const facts = new Facts()
      .piece('24 09:00', 3, 'Beech stool', [
        step('coat', 'coat', { windows: [rule, { ...rule, id: 'scuff', milestone: 'scuff' }] }),
        step('next', 'next', { needs: ['recoat', 'scuff'] }),
      ])
      .done('24 17:00', 3, 'coat');
    expect(told(facts, evening, morning)).toEqual([
      'Beech stool 24T19:00 wait > go, costs nothing',
    ]);
  });

  it('has odd timers in it', () => {
    const facts = new Facts().tell('24 18:00', 'timer-started', {
      timer: 't',
      piece: null,
      label: 'soak',
      ms: 2 * hour,
    });
    expect(duesTill(facts.bench(), evening, morning, sense)).toMatchObject([
      { piece: null, timer: { label: 'soak' }, at: at('24 20:00') },
    ]);
  });
});

describe('before you go', () => {
  const advice = (facts: Facts, from = evening, till = morning) =>
    beforeYouGo(facts.bench(), from, till, sense);

  it('is the step that saves what closes overnight, with its minutes and its end', () => {
    expect(advice(afternoon())).toMatchObject([
      {
        piece: { name: 'Plant stand' },
        step: { name: 'next coat' },
        minutes: { low: 15, high: 22 },
        by: at('24 18:30'),
        saves: { says: 'scuff 320 first' },
      },
      { piece: { name: 'Beech stool' }, by: at('24 23:00') },
    ]);
  });

  it('is also what closes at the very minute at which somebody is back', () => {
    expect(advice(afternoon(), evening, at('24 18:30')).map(({ by }) => by)).toEqual([
      at('24 18:30'),
    ]);
  });

  it('is nothing where nothing closes before the morning', () => {
    expect(advice(afternoon(), at('24 14:29'), at('24 18:00'))).toEqual([]);
  });

  it('is nothing that can not be begun yet, or that is over', () => {
    expect(advice(afternoon(), at('24 12:00')).map(({ piece }) => piece.name)).toEqual([
      'Plant stand',
    ]);
    expect(advice(afternoon(), at('24 23:30'))).toEqual([]);
  });

  it('is nothing on a piece that is on hold', () => {
    const held = afternoon().tell('24 17:00', 'hold-placed', {
      piece: 'p2',
      reason: 'an answer',
      askAgain: null,
    });
    expect(advice(held).map(({ piece }) => piece.name)).toEqual(['Beech stool']);
  });

  it('is never a step that would itself leave something behind that spoils', () => {
    const spoiling = (windows: (typeof bleach)[]) =>
      new Facts()
        .piece('24 09:00', 2, 'Wall shelf', [
          step('coat', 'coat', { windows: [recoat(hour, 3 * hour)] }),
          step('next', 'next', { needs: ['recoat'], windows }),
        ])
        .stamp('24 16:00', 2, 'coat', 'first-stroke')
        .done('24 16:10', 2, 'coat');
    expect(advice(spoiling([]))).toHaveLength(1);
    expect(advice(spoiling([bleach]))).toEqual([]);
  });

  it('is a single act where that is enough', () => {
    const facts = new Facts()
      .piece('24 09:00', 2, 'Wall shelf', [step('mix', 'mix', { windows: [pot] })])
      .stamp('24 17:00', 2, 'mix', 'mixed');
    expect(advice(facts)).toMatchObject([
      { step: null, minutes: null, by: at('24 21:00'), window: { rule: { verb: 'wash out' } } },
    ]);
  });
});

describe('the questions of the evening', () => {
  const oil = product('oil', [], { productClass: 'oil varnish', selfHeatingRags: true });
  const clear = product('clear', [], { productClass: 'waterborne clear' });
  const aerosol = product('can', [], { productClass: 'aerosol enamel' });
  const worked = (used: typeof oil | null, more: Parameters<typeof step>[2] = {}) =>
    new Facts()
      .piece(
        '24 09:00',
        1,
        'Oak settle',
        [step('s', 'step', { ...(used === null ? {} : { product: used.id }), ...more })],
        used === null ? [] : [used],
      )
      .done('24 10:00', 1, 's');
  const asked = (facts: Facts) => questionsFor(facts.bench(), evening, sense);
  const shut = (
    facts: Facts,
    when: string,
    answers: Partial<Record<OvernightQuestion, OvernightAnswer>>,
  ) => facts.tell(when, 'shop-shut', { answers, backAt: null });

  it('are none where nothing was used', () => {
    expect(asked(worked(null))).toEqual([]);
    expect(asked(new Facts())).toEqual([]);
  });

  it('ask about rags after a product whose rags heat up, until told that they are dealt with', () => {
    expect(asked(worked(oil))).toEqual(['rags', 'cans']);
    expect(asked(worked(clear))).toEqual(['cans']);
    const no = shut(worked(oil), '24 17:00', { rags: 'no', cans: 'yes' });
    expect(asked(no)).toEqual(['rags']);
    const yes = shut(worked(oil), '24 17:00', { rags: 'yes', cans: 'yes' });
    expect(asked(yes)).toEqual([]);
    // A later evening without oil does not undo it, a later day with oil does.
    expect(asked(shut(yes, '24 17:30', { cans: 'does not apply' }))).toEqual([]);
    expect(asked(yes.stamp('24 17:45', 1, 's', 'first-stroke'))).toEqual(['rags', 'cans']);
  });

  it('ask again where the answer was taken back', () => {
    const yes = shut(worked(oil), '24 17:00', { rags: 'yes', cans: 'yes' });
    const group = yes.list.at(-1)?.group ?? '';
    expect(asked(yes.tell('24 17:01', 'group-withdrawn', { withdrawn: group }))).toEqual([
      'rags',
      'cans',
    ]);
  });

  it('are told that rags are dealt with also by itself, until the next oily work, and ask again when taken back', () => {
    const dealtWith = () => worked(oil).tell('24 17:00', 'rags-dealt-with', {});
    const dealt = dealtWith();
    expect(asked(dealt)).toEqual(['cans']);
    expect(ragsFrom(worked(oil).bench()).map(({ number }) => number)).toEqual([1]);
    expect(ragsFrom(dealt.bench())).toEqual([]);
    expect(asked(dealtWith().stamp('24 17:30', 1, 's', 'first-stroke'))).toEqual(['rags', 'cans']);
    const group = dealt.list.at(-1)?.group ?? '';
    expect(asked(dealt.tell('24 17:01', 'group-withdrawn', { withdrawn: group }))).toContain(
      'rags',
    );
  });

  it('ask about rags also when the piece has left the bench', () => {
    expect(asked(worked(oil).tell('24 11:00', 'piece-left-bench', { piece: 'p1' }))).toContain(
      'rags',
    );
  });

  it('ask about the gun after spraying, but not with a can', () => {
    const sprayed = { stepClass: 'coat, sprayed' } as const;
    expect(asked(worked(clear, sprayed))).toEqual(['gun', 'cans']);
    expect(asked(worked(aerosol, sprayed))).toEqual(['cans']);
  });

  it('ask about a pot that was mixed and not washed out', () => {
    const mixed = new Facts()
      .piece('24 09:00', 1, 'Oak settle', [step('mix', 'mix', { windows: [pot] })])
      .stamp('24 17:00', 1, 'mix', 'mixed');
    expect(asked(mixed)).toEqual(['pots']);
    expect(asked(mixed.stamp('24 17:50', 1, 'mix', 'washed-out'))).toEqual([]);
  });

  it('ask about heat while something dries, sets or cures', () => {
    expect(asked(afternoon())).toContain('heat');
    const over = worked(clear, { windows: [recoat(hour, null)] });
    expect(asked(over)).toEqual(['cans']);
  });
});
