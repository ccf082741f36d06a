import { describe, expect, test } from 'vitest';
import { closesAt, opensAt, stretchAt } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import { airThatSlows } from '../support/sense.ts';
import { bleachAndClear, oilUntilRight, twoCoats, twoPart } from '../support/schedules.ts';
import { expectStates } from '../support/walk.ts';
import { Workday } from '../support/workday.ts';

/** Coat 1 from 9:00 to 9:30. */
function coated(day = new Workday()): { readonly day: Workday; readonly table: string } {
  const table = day.adds('Side table', twoCoats, at('8:00'));
  day.firstStroke(table, at('9:00')).done(table, at('9:30'));
  return { day, table };
}

describe('a coat and its milestones', () => {
  test('opens counting from the last stroke and closes counting from the first', () => {
    const { day, table } = coated();
    expectStates(day.window(table, 'recoat'), {
      '9:00': 'before',
      '11:29:59': 'before',
      '11:30': 'open',
      // An hour before work is lost.
      '31:59': 'open',
      '32:00': 'closing',
      '32:59': 'closing',
      '33:00': 'late',
    });
    expect(stretchAt(day.window(table, 'recoat'), at('33:00'))).toMatchObject({
      meaning: 'go after work',
      loss: 'costs work',
      says: 'scuff 320 first',
    });
  });

  test('starts all its milestones, each with its own opening', () => {
    const { day, table } = coated();
    const openings = Object.fromEntries(
      day.windows(table).map((window) => [window.rule.id, opensAt(window)]),
    );
    expect(openings).toEqual({
      'dust-free': at('10:00'),
      scuff: at('11:30'),
      recoat: at('11:30'),
      'turn-over': at('17:30'),
      'light-use': at('33:30'),
      'full-cure': at(`${9 + 21 * 24}:30`),
    });
  });

  test('is still being put on as long as the last stroke was not told', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    day.firstStroke(table, at('9:00'));
    const window = day.window(table, 'recoat');
    expect(window.stretches).toHaveLength(1);
    expect(opensAt(window)).toBeNull();
    expect(closesAt(window, at('9:10'))).toBeNull();
    expectStates(window, { '9:00': 'before', '40:00': 'before' });
  });

  test('counts from the pick-up where the first stroke was never told, and says so', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    day.does({ do: 'pick up', targets: [{ piece: table, part: null }] }, at('8:50'));
    day.done(table, at('9:30'));
    const window = day.window(table, 'recoat');
    expect(window.assumed).toBe(true);
    expect(window.begunAt).toBe(at('8:50'));
    expectStates(window, {
      '11:29': 'before',
      '11:30': 'open',
      '32:49': 'closing',
      '32:50': 'late',
    });
  });

  test('counts from the finish where nothing else is known', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    day.done(table, at('9:30'));
    expect(day.window(table, 'recoat')).toMatchObject({ assumed: true, begunAt: at('9:30') });
  });

  test('told strokes are not assumed', () => {
    const { day, table } = coated();
    expect(day.window(table, 'recoat').assumed).toBe(false);
  });

  test('is over once the next coat goes on, and that one has its own windows', () => {
    const { day, table } = coated();
    day.firstStroke(table, at('12:00'));
    expectStates(day.window(table, 'recoat'), { '11:59': 'open', '12:00': 'done' });
    expectStates(day.window(table, 'full-cure'), { '11:59': 'before', '12:00': 'done' });
    day.done(table, at('12:20'));
    expectStates(day.window(table, 'recoat', 1), { '14:19': 'before', '14:20': 'open' });
  });

  test('is not over for a later step that was done before it', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    const skip = { do: 'skip step', piece: table, step: 'coat 1' } as const;
    day.does({ ...skip, skipped: true }, at('8:10'));
    day.firstStroke(table, at('9:00')).done(table, at('9:30'));
    day.does({ ...skip, skipped: false }, at('11:50'));
    day.firstStroke(table, at('12:00')).done(table, at('12:30'));
    expectStates(day.window(table, 'recoat', 0), { '14:29': 'before', '14:30': 'open' });
    expect(day.window(table, 'recoat', 0).subject.stepId).toBe('coat 1');
  });

  test('a scuff that is done opens again what was to be scuffed first, and nothing is lost any more', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
    for (const clock of ['8:10', '8:20', '8:30']) day.done(chest, at(clock));
    day.firstStroke(chest, at('9:00')).done(chest, at('9:30'));
    expectStates(day.window(chest, 'recoat'), { '33:00': 'late' });
    day.done(chest, at('34:00'));
    expectStates(day.window(chest, 'recoat'), { '34:00': 'open', '200:00': 'open' });
    expect(closesAt(day.window(chest, 'recoat'), at('34:00'))).toBeNull();
  });
});

describe('trying the surface', () => {
  test('"not yet" keeps it closed a while longer, and again', () => {
    const { day, table } = coated();
    day.checks(table, 'not yet', at('11:40'));
    expectStates(day.window(table, 'recoat'), { '12:09': 'before', '12:10': 'open' });
    day.checks(table, 'not yet', at('12:15'));
    expectStates(day.window(table, 'recoat'), { '12:44': 'before', '12:45': 'open' });
  });

  test('"not yet" long before the label says so moves nothing', () => {
    const { day, table } = coated();
    day.checks(table, 'not yet', at('10:00'));
    expectStates(day.window(table, 'recoat'), { '11:29': 'before', '11:30': 'open' });
  });

  test('"ready" opens it at once', () => {
    const { day, table } = coated();
    day.checks(table, 'ready', at('11:00'));
    expectStates(day.window(table, 'recoat'), { '10:59': 'before', '11:00': 'open' });
    expect(day.window(table, 'recoat').foundReadyAt).toBe(at('11:00'));
  });

  test('"not yet" and then "ready": the later finding counts', () => {
    const { day, table } = coated();
    day.checks(table, 'not yet', at('11:40')).checks(table, 'ready', at('11:50'));
    expectStates(day.window(table, 'recoat'), { '11:50': 'open', '12:00': 'open' });
    expect(day.window(table, 'recoat')).not.toHaveProperty('heldBackAt');
  });

  test('"ready" and then "not yet": the later finding counts', () => {
    const { day, table } = coated();
    day.checks(table, 'ready', at('11:00')).checks(table, 'not yet', at('11:20'));
    expectStates(day.window(table, 'recoat'), { '11:49': 'before', '11:50': 'open' });
    expect(day.window(table, 'recoat')).toMatchObject({
      foundReadyAt: null,
      heldBackAt: at('11:20'),
    });
  });

  test('"trouble" says nothing about time', () => {
    const { day, table } = coated();
    day.checks(table, 'not yet', at('11:40'));
    const before = day.window(table, 'recoat');
    day.checks(table, 'trouble', at('11:45'));
    expect(day.window(table, 'recoat')).toEqual(before);
    day.checks(table, 'ready', at('12:00')).checks(table, 'trouble', at('12:05'));
    expect(day.window(table, 'recoat').foundReadyAt).toBe(at('12:00'));
  });

  test('a two-part coat is not opened by a finger', () => {
    const day = new Workday();
    const top = day.adds('Table top', twoPart, at('8:00'));
    day.next(top, at('8:50')).next(top, at('9:00')).done(top, at('9:20'));
    day.checks(top, 'ready', at('10:00'));
    expectStates(day.window(top, 'green'), {
      '10:00': 'before',
      '12:19': 'before',
      '12:20': 'open',
    });
  });

  test('one milestone that is tried moves no other', () => {
    const { day, table } = coated();
    day.checks(table, 'not yet', at('11:40'), 'recoat');
    expectStates(day.window(table, 'scuff'), { '11:30': 'open', '11:45': 'open' });
  });
});

describe('no open time is left', () => {
  test('spreading takes longer than the slack: from waiting straight to late', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    day.firstStroke(table, at('9:00')).done(table, at('31:30'));
    const window = day.window(table, 'recoat');
    expect(window.stretches.map(({ meaning }) => meaning)).toEqual(['wait', 'go after work']);
    expectStates(window, { '33:00': 'before', '33:29': 'before', '33:30': 'late' });
    expect(opensAt(window)).toBeNull();
    expect(closesAt(window, at('32:00'))).toMatchObject({
      at: at('33:30'),
      next: { says: 'scuff 320 first' },
    });
  });

  test('cold damp air pushes the opening past the closing', () => {
    const { day, table } = coated(new Workday({ sense: airThatSlows(4) }));
    // Opens 8 h after the last stroke, closes 6 h after the first.
    const window = day.window(table, 'recoat');
    expectStates(window, { '15:00': 'before', '17:29': 'before', '17:30': 'late' });
  });

  test('a little slow air opens later and closes earlier, never the reverse', () => {
    const { day, table } = coated(new Workday({ sense: airThatSlows(2) }));
    expectStates(day.window(table, 'recoat'), {
      '13:29': 'before',
      '13:30': 'open',
      '20:00': 'closing',
      '21:00': 'late',
    });
  });

  test('a surface that will be lost without ever having been open stands first all the same', () => {
    const day = new Workday({ sense: airThatSlows(3) });
    const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
    day.done(chest, at('8:40')).next(chest, at('9:00'));
    // Opens after 30 min, closes after 6:40.
    expect(day.window(chest, 'b-on').stretches.map(({ meaning }) => meaning)).toEqual([
      'wait',
      'late',
    ]);
    expect(day.standing(chest, at('9:05')).rank).toBe('spoils');
  });
});

describe('cure in stages', () => {
  test('runs out by itself, each stage at its time', () => {
    const day = new Workday();
    const box = day.adds('Ash box', oilUntilRight, at('8:00'));
    day.firstStroke(box, at('9:00')).done(box, at('9:30'));
    day.done(box, at('22:00')).does({ do: 'put down' }, at('22:05'));
    expectStates(day.window(box, 'light-use'), { '57:29': 'before', '57:30': 'open' });
    expectStates(day.window(box, 'full-cure'), { '345:29': 'before', '345:30': 'open' });
    expect(day.standing(box, at('23:00'))).toMatchObject({ rank: 'curing', step: null });
    expect(day.standing(box, at('23:00')).window?.rule.id).toBe('full-cure');
  });

  test('another coat begins the cure anew', () => {
    const day = new Workday();
    const box = day.adds('Ash box', oilUntilRight, at('8:00'));
    day.firstStroke(box, at('9:00')).done(box, at('9:30'));
    day.does({ do: 'repeat step', piece: box, step: 'oil' }, at('10:00'));
    day.firstStroke(box, at('22:00')).done(box, at('22:30'));
    expectStates(day.window(box, 'full-cure'), { '21:59': 'before', '22:00': 'done' });
    expect(opensAt(day.window(box, 'full-cure', 1))).toBe(at(`${22 + 14 * 24}:30`));
  });
});

describe('repeated until it is right', () => {
  test('each oil coat waits for the one before, and the wax for the last', () => {
    const day = new Workday();
    const box = day.adds('Ash box', oilUntilRight, at('8:00'));
    day.firstStroke(box, at('9:00')).done(box, at('9:30'));
    day.does({ do: 'repeat step', piece: box, step: 'oil' }, at('10:00'));
    expect(day.standing(box, at('12:00'))).toMatchObject({ step: { name: 'oil, again' } });
    expect(day.standing(box, at('12:00')).window).toMatchObject({
      rule: { id: 'recoat' },
      closedAt: null,
    });
    day.firstStroke(box, at('22:00')).done(box, at('22:30'));
    expectStates(day.window(box, 'recoat'), { '21:59': 'open', '22:00': 'done' });
    expectStates(day.window(box, 'recoat', 1), { '34:29': 'before', '34:30': 'open' });
    expect(day.standing(box, at('30:00')).step?.name).toBe('wax');
  });

  test('rounds within one step are passes of it', () => {
    const day = new Workday();
    const box = day.adds('Ash box', oilUntilRight, at('8:00'));
    day.firstStroke(box, at('9:00')).firstStroke(box, at('9:20')).done(box, at('9:40'));
    expect(day.windows(box, 'recoat').map(({ subject }) => subject.pass)).toEqual([1, 2]);
    expectStates(day.window(box, 'recoat', 0), { '9:19': 'before', '9:20': 'done' });
    expectStates(day.window(box, 'recoat', 1), { '21:39': 'before', '21:40': 'open' });
  });
});

describe('the green stage of a two-part coat', () => {
  test('takes the next coat while it is green, then only after sanding', () => {
    const day = new Workday();
    const top = day.adds('Table top', twoPart, at('8:00'));
    day.next(top, at('8:50')).next(top, at('9:00')).done(top, at('9:20'));
    expectStates(day.window(top, 'green'), {
      '12:19': 'before',
      '12:20': 'open',
      '16:00': 'closing',
      '17:00': 'late',
    });
    expect(stretchAt(day.window(top, 'green'), at('18:00')).says).toBe(
      'wash, sand 100, or a tie coat',
    );
    day.next(top, at('16:50'));
    // A new pot is mixed: nothing has touched the coat yet.
    expectStates(day.window(top, 'green'), { '16:59': 'closing', '17:00': 'late' });
    day.next(top, at('17:05'));
    expectStates(day.window(top, 'green'), { '17:04': 'late', '17:05': 'done' });
  });
});
