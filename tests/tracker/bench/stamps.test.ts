import { describe, expect, test } from 'vitest';
import {
  currentStep,
  isDone,
  lanesOf,
  nextAct,
  standingOf,
} from '../../../src/tracker/bench/index.ts';
import type { FinishingSchedule } from '../../../src/tracker/trade/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import {
  aerosol,
  bleachAndClear,
  glueUp,
  oilUntilRight,
  stainInSections,
  strip,
  twoCoats,
  twoPart,
} from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

const next = { do: 'next stamp', piece: 'chest', part: null } as const;
const chestWith = (plan: FinishingSchedule) => past().added('chest', plan, { name: 'Oak chest' });

/** What the foot line says, press after press of the next-stamp key. */
function sequence(plan: FinishingSchedule, presses: number): readonly string[] {
  const day = new Workday();
  const piece = day.adds('Oak chest', plan, at('8:00'));
  return Array.from({ length: presses }, (_, index) => {
    const act = nextAct(day.bench, day.piece(piece), null, { now: at('9:00'), sense: day.sense });
    day.next(piece, at(`9:${String(index).padStart(2, '0')}`));
    return act.says;
  });
}

describe('the next-stamp key goes through the sequence of a step', () => {
  test('sanding: pick up, done; bleaching: A, B, done', () => {
    expect(sequence(bleachAndClear, 8)).toEqual([
      'pick up sand',
      'sand done',
      'A, first stroke on',
      'B, first stroke on',
      'bleach done',
      'pick up rinse',
      'rinse done',
      'first stroke on',
    ]);
  });

  test('sections: on, off, on, off, until done outright', () => {
    expect(sequence(stainInSections, 5)).toEqual([
      'section 1 on',
      'section 1 off',
      'section 2 on',
      'section 2 off',
      'section 3 on',
    ]);
  });

  test('passes: first and last stroke of each, the last one by done', () => {
    expect(sequence(aerosol, 7)).toEqual([
      'pass 1 of 3, first stroke on',
      'pass 1 of 3, last stroke',
      'pass 2 of 3, first stroke on',
      'pass 2 of 3, last stroke',
      'pass 3 of 3, first stroke on',
      'spray 1 done',
      'pass 1 of 3, first stroke on',
    ]);
  });

  test('glue: first stroke, in clamps, done', () => {
    expect(sequence(glueUp, 4)).toEqual([
      'first stroke on',
      'in clamps',
      'glue done',
      'pick up fit',
    ]);
  });

  test('a pot: mixed, first stroke, done', () => {
    expect(sequence(twoPart, 4)).toEqual([
      'mixed',
      'first stroke on',
      'epoxy 1 done',
      // The pot of the first coat still stands there.
      'first stroke on',
    ]);
  });

  test('at the end nothing is left', () => {
    expect(sequence(strip, 4)).toEqual([
      'first stroke on',
      'strip done',
      'pick up sand',
      'sand done',
    ]);
    given(chestWith(strip).done('chest', 'strip', at('9:00')).done('chest', 'sand', at('10:00')))
      .when(next, at('11:00'))
      .thenRefused('Not stamped: every step of 1 Oak chest is done. i inserts one.');
  });
});

describe('a step that was picked up before its turn', () => {
  const day = (): { readonly day: Workday; readonly piece: string } => {
    const shop = new Workday();
    const piece = shop.adds('Oak chest', bleachAndClear, at('8:00'));
    shop.does({ do: 'pick up', targets: [{ piece, part: null, step: 'bleach' }] }, at('8:10'));
    return { day: shop, piece };
  };
  const says = (shop: Workday, piece: string): string =>
    nextAct(shop.bench, shop.piece(piece), null, { now: at('9:00'), sense: shop.sense }).says;
  const shownStep = (shop: Workday, piece: string, now: number): string | undefined =>
    standingOf(shop.bench, shop.piece(piece), now, shop.sense).step?.name;

  test('is what the keys go on with, through its stamps to done; then comes the one whose turn it was', () => {
    const { day: shop, piece } = day();
    const told = [says(shop, piece)];
    for (const when of ['8:11', '8:20', '8:30']) {
      expect(shownStep(shop, piece, at(when))).toBe('bleach');
      shop.next(piece, at(when));
      told.push(says(shop, piece));
    }
    expect(told).toEqual([
      'A, first stroke on',
      'B, first stroke on',
      'bleach done',
      'pick up sand',
    ]);
    expect(shownStep(shop, piece, at('8:31'))).toBe('sand');
  });

  test('put down with something on, it is not left for an earlier step by one key', () => {
    const { day: shop, piece } = day();
    shop.next(piece, at('8:11'));
    shop.does({ do: 'put down', piece }, at('8:12'));
    expect(says(shop, piece)).toBe('B, first stroke on');
  });

  test('put down with nothing on, the turn of the earlier one comes', () => {
    const { day: shop, piece } = day();
    shop.does({ do: 'put down', piece }, at('8:12'));
    expect(says(shop, piece)).toBe('pick up sand');
  });
});

describe('what a stamp records', () => {
  test('piece, step, event, agent, pass, section, and the air as last read', () => {
    const air = { tempC: 19, rh: 55, readAt: at('8:30') };
    given(chestWith(bleachAndClear).done('chest', 'sand', at('8:40')))
      .when(next, at('9:00'), { air })
      .then(
        { kind: 'picked-up', body: { targets: [target('chest', 'bleach')], hand: 1 } },
        {
          kind: 'stamped',
          body: {
            piece: 'chest',
            part: null,
            step: 'bleach',
            event: 'first-stroke',
            agent: 'A',
            pass: 1,
            section: null,
            air,
          },
        },
      );
  });

  test('in hand for that step, nothing is picked up again', () => {
    given(chestWith(twoCoats).pickedUp('s', at('8:50'), [target('chest', 'coat 1')]))
      .when(next, at('9:00'))
      .then({ kind: 'stamped', body: { event: 'first-stroke' } });
  });

  test('in hand for a step that is done, it changes hands', () => {
    given(
      chestWith(bleachAndClear)
        .pickedUp('s', at('8:30'), [target('chest', 'sand')])
        .done('chest', 'sand', at('8:50')),
    )
      .when(next, at('9:00'))
      .then(
        { kind: 'put-down', body: { session: 's' } },
        { kind: 'picked-up', body: {} },
        { kind: 'stamped', body: {} },
      );
  });

  test('earlier, when it is said to have been', () => {
    given(chestWith(twoCoats))
      .when(next, at('9:10'), { at: at('9:00') })
      .then(
        { kind: 'picked-up', body: {}, at: at('9:00') },
        { kind: 'stamped', body: {}, at: at('9:00') },
      );
  });

  test('never before the stamp that came before it', () => {
    given(chestWith(aerosol).stamped('chest', 'spray 1', 'first-stroke', at('9:00')))
      .when(next, at('9:10'), { at: at('8:59') })
      .thenRefused(
        'Not stamped: 1 Oak chest has a later stamp on that step. Take it back first, or give a later time.',
      );
    given(chestWith(twoCoats).stamped('chest', 'coat 1', 'first-stroke', at('9:00')))
      .when({ do: 'done', piece: 'chest', part: null }, at('9:10'), { at: at('8:59') })
      .thenRefused(/^Not done: 1 Oak chest has a later stamp/);
  });

  test('a key pressed after the clock was set back counts all the same', () => {
    given(chestWith(twoCoats).stamped('chest', 'coat 1', 'first-stroke', at('9:00')))
      .when(next, at('8:30'))
      .then({ kind: 'step-done', body: { step: 'coat 1' } });
  });
});

describe('the first stroke outright', () => {
  const first = { do: 'first stroke', piece: 'chest', part: null } as const;

  test('passes over what the sequence would still expect', () => {
    given(chestWith(twoPart))
      .when(first, at('9:00'))
      .then({ kind: 'picked-up', body: {} }, { kind: 'stamped', body: { event: 'first-stroke' } });
  });

  test('A first, then B, then no more of this round', () => {
    const sanded = chestWith(bleachAndClear).done('chest', 'sand', at('8:40'));
    const a = sanded.stamped('chest', 'bleach', 'first-stroke', at('9:00'), { agent: 'A' });
    given(sanded)
      .when(first, at('9:00'))
      .then({ kind: 'picked-up', body: {} }, { kind: 'stamped', body: { agent: 'A', pass: 1 } });
    given(a)
      .when(first, at('9:12'))
      .then({ kind: 'picked-up', body: {} }, { kind: 'stamped', body: { agent: 'B', pass: 1 } });
    // Bleaching is repeated until it is right: the next round begins.
    given(a.stamped('chest', 'bleach', 'first-stroke', at('9:12'), { agent: 'B' }))
      .when(first, at('9:40'))
      .then({ kind: 'picked-up', body: {} }, { kind: 'stamped', body: { agent: 'A', pass: 2 } });
  });

  test('begins the next pass, told or not that the last one ended', () => {
    given(chestWith(aerosol).stamped('chest', 'spray 1', 'first-stroke', at('9:00')))
      .when(first, at('9:10'))
      .then(
        { kind: 'picked-up', body: {} },
        { kind: 'stamped', body: { event: 'first-stroke', pass: 2 } },
      );
  });

  test('of a coat that is one pass comes once', () => {
    given(chestWith(twoCoats).stamped('chest', 'coat 1', 'first-stroke', at('9:00')))
      .when(first, at('9:10'))
      .thenRefused(
        'Not stamped: the first stroke of coat 1 on 1 Oak chest is on. d when it is all on.',
      );
    given(chestWith(aerosol).stamped('chest', 'spray 1', 'first-stroke', at('9:00'), { pass: 3 }))
      .when(first, at('9:10'))
      .thenRefused(/the first stroke of spray 1 on 1 Oak chest is on/);
  });

  test('is none on a step without strokes', () => {
    given(chestWith(bleachAndClear))
      .when(first, at('9:00'))
      .thenRefused('Not stamped: sand on 1 Oak chest has no stroke to put on. Enter: pick up.');
  });
});

describe('the next section outright', () => {
  const section = { do: 'next section', piece: 'chest', part: null } as const;
  const stained = chestWith(stainInSections).pickedUp('s', at('8:50'), [target('chest', 'stain')]);

  test('puts the first on', () => {
    given(stained)
      .when(section, at('9:00'))
      .then({ kind: 'stamped', body: { event: 'section-on', section: 1 } });
  });

  test('takes the last off and puts the next on, in one press', () => {
    given(stained.stamped('chest', 'stain', 'section-on', at('9:00'), { section: 1 }))
      .when(section, at('9:06'))
      .then(
        { kind: 'stamped', body: { event: 'section-off', section: 1 } },
        { kind: 'stamped', body: { event: 'section-on', section: 2 } },
      );
  });

  test('takes nothing off twice', () => {
    given(
      stained
        .stamped('chest', 'stain', 'section-on', at('9:00'), { section: 1 })
        .stamped('chest', 'stain', 'section-off', at('9:05'), { section: 1 }),
    )
      .when(section, at('9:06'))
      .then({ kind: 'stamped', body: { event: 'section-on', section: 2 } });
  });

  test('is none on a step that is worked as one', () => {
    given(chestWith(twoCoats))
      .when(section, at('9:00'))
      .thenRefused(
        'Not stamped: coat 1 on 1 Oak chest is not worked in sections. Space: next stamp.',
      );
  });
});

describe('done', () => {
  const done = { do: 'done', piece: 'chest', part: null } as const;

  test('finishes the step whatever was stamped, and leaves the piece in hand', () => {
    given(chestWith(twoCoats).pickedUp('s', at('8:50'), [target('chest', 'coat 1')]))
      .when(done, at('9:30'))
      .then({
        kind: 'step-done',
        body: {
          piece: 'chest',
          part: null,
          step: 'coat 1',
          pass: 1,
          expectation: { minutes: 30, low: 20, high: 50, chance: 0.8, model: 'finishing schedule' },
          air: null,
        },
      });
  });

  test('the next step does not begin by itself', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
    expect(day.standing(piece, at('9:31'))).toMatchObject({
      rank: 'in hand',
      step: { id: 'coat 2' },
    });
    expect(day.bench.sessions[0]).toMatchObject({ end: null, targets: [{ step: 'coat 1' }] });
  });

  test('keeps the passes that were made', () => {
    given(
      chestWith(aerosol)
        .stamped('chest', 'spray 1', 'first-stroke', at('9:00'))
        .stamped('chest', 'spray 1', 'last-stroke', at('9:04')),
    )
      .when(done, at('9:10'))
      .then({ kind: 'step-done', body: { pass: 1 } });
  });

  test('with every step done there is none', () => {
    given(chestWith(strip).done('chest', 'strip', at('9:00')).done('chest', 'sand', at('9:10')))
      .when(done, at('9:20'))
      .thenRefused('Not done: every step of 1 Oak chest is done. i inserts one.');
  });

  test('passes over what is skipped', () => {
    given(chestWith(strip).told('step-skipped', { piece: 'chest', step: 'strip', skipped: true }))
      .when(done, at('9:20'))
      .then({ kind: 'step-done', body: { step: 'sand' } });
  });
});

describe('any stamp outright', () => {
  const stamp = (event: 'topped-up' | 'turned' | 'washed-out' | 'mixed', agent?: string) =>
    ({
      do: 'stamp',
      piece: 'chest',
      part: null,
      event,
      ...(agent === undefined ? {} : { agent }),
    }) as const;

  test('belongs to the last step that was begun, in its pass and section, and picks nothing up', () => {
    given(chestWith(aerosol).stamped('chest', 'spray 1', 'first-stroke', at('9:00'), { pass: 2 }))
      .when(stamp('turned'), at('9:30'))
      .then({
        kind: 'stamped',
        body: { step: 'spray 1', event: 'turned', pass: 2, section: null },
      });
  });

  test('also after that step was finished', () => {
    given(chestWith(twoCoats).done('chest', 'coat 1', at('9:00')))
      .when(stamp('turned'), at('17:30'))
      .then({ kind: 'stamped', body: { step: 'coat 1', event: 'turned' } });
  });

  test('belongs to the step that is next where nothing was begun', () => {
    given(chestWith(twoPart))
      .when(stamp('mixed', 'hardener'), at('9:00'))
      .then(
        { kind: 'pot-mixed', body: { letter: 'A' } },
        { kind: 'stamped', body: { step: 'epoxy 1', agent: 'hardener' } },
      );
  });

  test('of a part belongs to what was begun on that part', () => {
    const parted = chestWith(twoCoats)
      .parts('chest', 'top', 'case')
      .done('chest', 'coat 1', at('9:00'), { part: 'top' })
      .stamped('chest', 'coat 2', 'first-stroke', at('12:00'), { part: 'top' });
    given(parted)
      .when({ ...stamp('turned'), part: 'case' }, at('13:00'))
      .then({ kind: 'stamped', body: { part: 'case', step: 'coat 1' } });
    given(parted)
      .when({ ...stamp('turned'), part: 'top' }, at('13:00'))
      .then({ kind: 'stamped', body: { part: 'top', step: 'coat 2' } });
  });
});

describe('parts', () => {
  const parted = chestWith(twoCoats).parts('chest', 'top', 'case');

  test('each goes through the steps on its own', () => {
    given(parted.done('chest', 'coat 1', at('9:00'), { part: 'top' }))
      .when({ do: 'done', piece: 'chest', part: 'top' }, at('12:00'))
      .then({ kind: 'step-done', body: { part: 'top', step: 'coat 2' } });
    given(parted.done('chest', 'coat 1', at('9:00'), { part: 'top' }))
      .when({ do: 'done', piece: 'chest', part: 'case' }, at('12:00'))
      .then({ kind: 'step-done', body: { part: 'case', step: 'coat 1' } });
  });

  test('all parts together finish the step of the piece, and so does the whole', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    expect(lanesOf(day.piece(piece))).toEqual([null]);
    day.does({ do: 'name parts', piece, names: ['top', 'case'] }, at('8:01'));
    const [top, box] = day.piece(piece).parts.map(({ id }) => id) as [string, string];
    expect(lanesOf(day.piece(piece))).toEqual([top, box]);
    day.done(piece, at('9:00'), top);
    expect(isDone(day.piece(piece), 'coat 1', null)).toBe(false);
    expect(currentStep(day.piece(piece), null)?.id).toBe('coat 1');
    day.done(piece, at('9:10'), box);
    expect(isDone(day.piece(piece), 'coat 1', null)).toBe(true);
    day.done(piece, at('12:00'));
    expect([top, box].map((part) => isDone(day.piece(piece), 'coat 2', part))).toEqual([
      true,
      true,
    ]);
  });

  test('a part that is added later has still to be done', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'name parts', piece, names: ['top', 'case'] }, at('8:01'));
    for (const { id } of day.piece(piece).parts) day.done(piece, at('9:00'), id);
    day.does({ do: 'name parts', piece, names: ['top', 'case', 'mirror'] }, at('9:10'));
    expect(isDone(day.piece(piece), 'coat 1', null)).toBe(false);
    expect(currentStep(day.piece(piece), day.piece(piece).parts[2]!.id)?.id).toBe('coat 1');
  });

  test.each([
    { do: 'next stamp', piece: 'chest', part: 'topp' },
    { do: 'first stroke', piece: 'chest', part: 'topp' },
    { do: 'next section', piece: 'chest', part: 'topp' },
    { do: 'done', piece: 'chest', part: 'topp' },
    { do: 'stamp', piece: 'chest', part: 'topp', event: 'turned' },
    { do: 'check', piece: 'chest', part: 'topp', finding: 'ready' },
    { do: 'pick up', targets: [{ piece: 'chest', part: 'topp' }] },
  ] as const)('one that is none is refused, and the nearest offered: $do', (intent) => {
    given(parted)
      .when(intent, at('9:00'))
      .thenRefused(/: 1 Oak chest has no part "topp"\.$/, ['top']);
  });
});

test('rounds of an oil until it looks right', () => {
  const day = new Workday();
  const piece = day.adds('Ash box', oilUntilRight, at('8:00'));
  day
    .firstStroke(piece, at('9:00'))
    .firstStroke(piece, at('9:20'))
    .firstStroke(piece, at('9:40'))
    .done(piece, at('9:55'));
  expect(day.piece(piece).stamps.map(({ pass }) => pass)).toEqual([1, 2, 3]);
  expect(day.piece(piece).finishes[0]?.pass).toBe(3);
});

test('a stamp that changes no window goes to the step in hand, though another was begun after it', () => {
  const told = past()
    .added('chest', twoCoats)
    .stamped('chest', 'coat 1', 'first-stroke', at('8:30'))
    .stamped('chest', 'coat 2', 'first-stroke', at('8:40'))
    .pickedUp('s', at('9:00'), [target('chest', 'coat 1')]);
  given(told)
    .when({ do: 'stamp', piece: 'chest', part: null, event: 'covered' }, at('9:10'))
    .then({ kind: 'stamped', body: { step: 'coat 1', event: 'covered' } });
});
