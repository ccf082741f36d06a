import { describe, expect, test } from 'vitest';
import {
  currentStep,
  leftOutWords,
  lockOn,
  nextAct,
  questionOf,
  stepPlace,
  type Intent,
} from '../../../src/tracker/bench/index.ts';
import { expectedMinutes } from '../../../src/tracker/estimate/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import { opensAt, stateAt } from '../../../src/tracker/windows/index.ts';
import { atTheLabel, monday, Work } from '../../outside/work.ts';
import { dependsOnPiece } from '../support/schedules.ts';

/** Without a wood, a year or an answer. */
const fresh = (): Work => new Work(dependsOnPiece, null);
const planned = (work: Work): readonly string[] =>
  work.piece.steps.filter(({ skipped }) => !skipped).map(({ id }) => id);
const stepOf = (work: Work, id: string) => {
  const step = work.piece.steps.find((each) => each.id === id);
  if (step === undefined) throw new Error(`no step ${id}`);
  return step;
};
const why = (work: Work, id: string): string => leftOutWords(work.piece, stepOf(work, id));
const tell = (work: Work, changes: Extract<Intent, { do: 'describe piece' }>['changes']): void => {
  work.act({ do: 'describe piece', piece: work.piece.id, changes }, monday);
};
const answer = (work: Work, given: string | null): string =>
  work.act({ do: 'answer', piece: work.piece.id, step: 'old finish', answer: given }, monday).says;
const skip = (work: Work, step: string, skipped: boolean): void => {
  work.act({ do: 'skip step', piece: work.piece.id, step, skipped }, monday);
};

describe('a step that is for some pieces', () => {
  test('is left out where the piece is none of them, says why, and is not counted', () => {
    const work = fresh();
    expect(planned(work)).toEqual(['lead test', 'old finish', 'strip', 'sample', 'coat', 'wrap']);
    tell(work, { yearMade: 1985, wood: 'hard' });
    expect(planned(work)).toEqual(['old finish', 'strip', 'sample', 'coat', 'wrap']);
    expect(why(work, 'lead test')).toBe('made 1985');
    expect(why(work, 'prime')).toBe('no answer yet: old finish');
    expect(why(work, 'coat')).toBe('');
    expect(stepPlace(work.piece, 'old finish')).toEqual({ place: 1, of: 5 });
    expect(currentStep(work.piece, null)?.id).toBe('old finish');
  });

  test('comes back when what is known of the piece changes', () => {
    const work = fresh();
    tell(work, { yearMade: 1985, wood: 'soft' });
    expect(planned(work)).not.toContain('lead test');
    expect(planned(work)).toContain('prime');
    tell(work, { yearMade: null });
    expect(planned(work)).toContain('lead test');
    tell(work, { yearMade: 1977, wood: 'hard' });
    expect(planned(work)).toContain('lead test');
    expect(planned(work)).not.toContain('prime');
    work.act({ do: 'take back' }, monday);
    expect(planned(work)).toContain('prime');
  });

  test('1978 is the first year that needs no lead test', () => {
    const work = fresh();
    tell(work, { yearMade: 1978 });
    expect(planned(work)).not.toContain('lead test');
  });

  test('can be put in by hand anyway, and follows its rule again once that is taken away', () => {
    const work = fresh();
    tell(work, { yearMade: 1985 });
    skip(work, 'lead test', false);
    expect(planned(work)).toContain('lead test');
    expect(why(work, 'lead test')).toBe('');
    skip(work, 'lead test', true);
    expect(planned(work)).not.toContain('lead test');
    tell(work, { yearMade: 1950 });
    expect(planned(work)).toContain('lead test');
  });

  test('that was skipped by hand stays so, whatever is told later', () => {
    const work = fresh();
    skip(work, 'lead test', true);
    tell(work, { yearMade: 1950 });
    expect(planned(work)).not.toContain('lead test');
    expect(why(work, 'lead test')).toBe('');
  });

  test('on which something was recorded is not left out any more', () => {
    const work = fresh();
    work.act({ do: 'pick up', targets: [{ piece: work.piece.id, part: null }] }, monday);
    work.done(monday + minute);
    tell(work, { yearMade: 1985 });
    expect(planned(work)).toContain('lead test');
  });
});

describe('a question', () => {
  test('picks the branch, and its answer can be changed and taken away', () => {
    const work = fresh();
    expect(answer(work, 'shellac')).toBe('old finish: alcohol: shellac, on 1 Test chest');
    expect(planned(work)).toContain('wash off');
    expect(planned(work)).not.toContain('strip');
    expect(why(work, 'strip')).toBe('alcohol: shellac');
    answer(work, 'varnish');
    expect(planned(work)).toContain('strip');
    expect(planned(work)).toContain('prime');
    expect(planned(work)).not.toContain('wash off');
    answer(work, null);
    expect(planned(work)).not.toContain('prime');
  });

  test('changes the minutes that a later step is expected to take', () => {
    const work = fresh();
    const strip = () => expectedMinutes(stepOf(work, 'strip'), work.piece);
    expect(strip()).toMatchObject({ minutes: 30, low: 20, high: 50 });
    answer(work, 'varnish');
    expect(strip()).toMatchObject({ minutes: 45, low: 30, high: 75 });
  });

  test('comes up when its step is done, unless it was answered before', () => {
    const work = fresh();
    expect(questionOf(work.piece, 'old finish')?.asks.question).toBe('which solvent softened it?');
    answer(work, 'shellac');
    expect(questionOf(work.piece, 'old finish')).toBeNull();
    expect(questionOf(work.piece, 'coat')).toBeNull();
  });

  test('refuses what is no answer, and offers those there are', () => {
    const work = fresh();
    expect(() => answer(work, 'shelac')).toThrow(
      'Not answered: "shelac" is no answer to "which solvent softened it?" on 1 Test chest.',
    );
    expect(() =>
      work.act({ do: 'answer', piece: work.piece.id, step: 'coat', answer: 'x' }, monday),
    ).toThrow('Not answered: coat on 1 Test chest asks nothing.');
  });

  test('a repeated step answers for its original', () => {
    const work = fresh();
    answer(work, 'shellac');
    work.act({ do: 'repeat step', piece: work.piece.id, step: 'old finish' }, monday);
    const again = work.piece.steps.find(({ copyOf }) => copyOf === 'old finish');
    work.act(
      { do: 'answer', piece: work.piece.id, step: again?.id ?? '', answer: 'varnish' },
      monday,
    );
    expect(planned(work)).toContain('strip');
  });
});

describe('a trial', () => {
  /** Up to the coat: the sample board is made and done at 9:00. */
  const made = (): Work => {
    const work = fresh();
    for (const step of ['lead test', 'old finish', 'strip']) skip(work, step, true);
    work.press(monday + 50 * minute);
    work.done(monday + hour);
    return work;
  };
  const pickUp = (work: Work, anyway?: string): string =>
    work.act(
      {
        do: 'pick up',
        targets: [{ piece: work.piece.id, part: null, step: 'coat' }],
        ...(anyway === undefined ? {} : { anyway }),
      },
      monday + 2 * hour,
    ).says;

  test('keeps its step locked until it was found ready, whatever key would begin it', () => {
    const work = fresh();
    expect(() => pickUp(work)).toThrow(
      'Not picked up: its trial first: sample, not made yet. The same key again: without it, and why.',
    );
    const later = made();
    const piece = later.piece.id;
    const waits =
      'its trial first: sample, not looked at yet. The same key again: without it, and why.';
    expect(() => pickUp(later)).toThrow(waits);
    expect(() => later.press(monday + 2 * hour)).toThrow(`Not stamped: ${waits}`);
    expect(() => later.done(monday + 2 * hour)).toThrow(`Not done: ${waits}`);
    expect(() => later.act({ do: 'first stroke', piece, part: null }, monday + 2 * hour)).toThrow(
      waits,
    );
    later.act({ do: 'check', piece, part: null, finding: 'ready' }, monday + 2 * hour);
    expect(later.press(monday + 2 * hour)).toBe('first stroke on, coat on 1 Test chest');
  });

  test('is judged in a window of its own, starts no milestone, and is pushed on by "not yet"', () => {
    const work = made();
    expect(work.windows().map(({ rule }) => rule.id)).toEqual(['trial']);
    const window = work.window('trial');
    expect(opensAt(window)).toBe(monday + hour + 30 * minute);
    expect(stateAt(window, monday + hour + 10 * minute)).toBe('before');
    work.act(
      { do: 'check', piece: work.piece.id, part: null, finding: 'not yet' },
      monday + 95 * minute,
    );
    expect(opensAt(work.window('trial'))).toBe(monday + 105 * minute);
    expect(nextAct(work.bench, work.piece, null, { now: monday, sense: atTheLabel })).toMatchObject(
      { act: 'stamp' },
    );
  });

  test('that showed trouble keeps the step locked until another one was found ready', () => {
    const work = made();
    const piece = work.piece.id;
    work.act(
      { do: 'check', piece, part: null, finding: 'trouble', shown: 'blotchy' },
      monday + 2 * hour,
    );
    expect(() => pickUp(work)).toThrow('sample, showed blotchy');
    work.act({ do: 'repeat step', piece, step: 'sample' }, monday + 2 * hour);
    expect(() => pickUp(work)).toThrow('sample, again, not made yet');
    work.press(monday + 3 * hour);
    work.done(monday + 3 * hour);
    work.act({ do: 'check', piece, part: null, finding: 'ready' }, monday + 4 * hour);
    expect(lockOn(work.piece, stepOf(work, 'coat'))).toBeNull();
  });

  test('that was skipped by hand still keeps its step; one that is left out by rule does not', () => {
    const work = fresh();
    skip(work, 'sample', true);
    expect(() => pickUp(work)).toThrow('sample, skipped');
    const without = new Work({
      ...dependsOnPiece,
      steps: dependsOnPiece.steps.map((step) =>
        step.id === 'sample' ? { ...step, onlyIf: { wood: ['soft' as const] } } : step,
      ),
    });
    expect(lockOn(without.piece, stepOf(without, 'coat'))).toBeNull();
  });

  test('can be gone without for a reason, which is recorded, and taken back with the pick-up', () => {
    const work = fresh();
    expect(() => pickUp(work, '  ')).toThrow('Not picked up: say why without its trial');
    expect(pickUp(work, 'tried on its twin')).toBe('picked up 1 Test chest, coat');
    expect(work.piece.waivers).toMatchObject([{ step: 'coat', reason: 'tried on its twin' }]);
    expect(lockOn(work.piece, stepOf(work, 'coat'))).toBeNull();
    work.act({ do: 'take back' }, monday + 2 * hour);
    expect(work.piece.waivers).toEqual([]);
    expect(lockOn(work.piece, stepOf(work, 'coat'))).not.toBeNull();
  });

  test('that was gone without has nothing left to judge', () => {
    const work = fresh();
    work.act(
      { do: 'pick up', targets: [{ piece: work.piece.id, part: null, step: 'sample' }] },
      monday,
    );
    work.done(monday + 5 * minute);
    expect(work.window('trial').closedAt).toBeNull();
    const started = monday + 3 * hour;
    work.act(
      {
        do: 'pick up',
        targets: [{ piece: work.piece.id, part: null, step: 'coat' }],
        anyway: 'tried on its twin',
      },
      started,
    );
    expect(work.window('trial').closedAt).toBeNull();
    work.act({ do: 'first stroke', piece: work.piece.id, part: null }, started + minute);
    expect(work.window('trial').closedAt).toBe(started + minute);
  });
});
