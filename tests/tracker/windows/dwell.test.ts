import { describe, expect, test } from 'vitest';
import { closesAt, opensAt, stretchAt } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import { bleachAndClear, bleachByWood, strip } from '../support/schedules.ts';
import { expectStates } from '../support/walk.ts';
import { Workday } from '../support/workday.ts';

/** A on at 9:00 on a piece that is sanded. */
function bleaching(): { readonly day: Workday; readonly chest: string } {
  const day = new Workday();
  const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
  day.done(chest, at('8:40')).next(chest, at('9:00'));
  return { day, chest };
}

describe('two-part bleach, B on while A is wet', () => {
  test('works, is to be followed up, and is lost once A has dried', () => {
    const { day, chest } = bleaching();
    const window = day.window(chest, 'b-on');
    expectStates(window, {
      '9:00': 'before',
      '9:09:59': 'before',
      // Ten minutes before a surface is lost the window is closing already.
      '9:10': 'closing',
      '9:19:59': 'closing',
      '9:20': 'late',
      '23:00': 'late',
    });
    expect(opensAt(window)).toBe(at('9:10'));
    expect(closesAt(window, at('9:00'))?.at).toBe(at('9:20'));
    expect(stretchAt(window, at('9:30'))).toMatchObject({
      loss: 'spoils',
      says: 'A dry: rinse, dry, start over',
    });
  });

  test('does not begin when the piece is picked up', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
    day.done(chest, at('8:40'));
    day.does({ do: 'pick up', targets: [{ piece: chest, part: null }] }, at('8:50'));
    expect(day.windows(chest, 'b-on')).toEqual([]);
  });

  test('is done with the first stroke of B, whatever came before', () => {
    const { day, chest } = bleaching();
    day.next(chest, at('9:12'));
    expectStates(day.window(chest, 'b-on'), {
      '9:11': 'closing',
      '9:12': 'done',
      '9:20': 'done',
    });
  });

  test('is done when the step is finished and B was never pressed', () => {
    const { day, chest } = bleaching();
    day.done(chest, at('9:35'));
    expectStates(day.window(chest, 'b-on'), { '9:34': 'late', '9:35': 'done' });
    expect(day.standing(chest, at('10:00')).rank).not.toBe('spoils');
  });

  test('dries from the last of B, and is done when the rinse is finished', () => {
    const { day, chest } = bleaching();
    day.next(chest, at('9:12')).done(chest, at('9:30'));
    expectStates(day.window(chest, 'dry'), {
      '9:12': 'before',
      '21:29': 'before',
      '21:30': 'open',
      '40:00': 'open',
    });
    day.done(chest, at('32:00'));
    expectStates(day.window(chest, 'dry'), { '31:59': 'open', '32:00': 'done' });
  });

  test('counts the drying from an assumed beginning where B was never pressed, and says so', () => {
    const { day, chest } = bleaching();
    day.done(chest, at('9:35'));
    const dry = day.window(chest, 'dry');
    expect(dry.assumed).toBe(true);
    // Picked up by the first stroke of A.
    expect(dry.begunAt).toBe(at('9:00'));
    expect(opensAt(dry)).toBe(at('21:35'));
  });
});

describe('the wood decides how long A stands', () => {
  const windowFor = (wood: 'soft' | 'hard' | null) => {
    const day = new Workday();
    const chest = day.adds('Pine chest', bleachByWood, at('8:00'));
    if (wood !== null)
      day.does({ do: 'describe piece', piece: chest, changes: { wood } }, at('8:01'));
    return day.next(chest, at('9:00')).window(chest, 'b-on');
  };

  test('softwood takes half as long', () => {
    expectStates(windowFor('soft'), { '9:04': 'before', '9:05': 'closing', '9:15': 'late' });
  });

  test('hardwood takes longer', () => {
    expectStates(windowFor('hard'), { '9:09': 'before', '9:10': 'closing', '9:20': 'late' });
  });

  test('wood that nobody told opens with the slower and closes with the quicker', () => {
    expectStates(windowFor(null), { '9:09': 'before', '9:10': 'closing', '9:15': 'late' });
  });
});

describe('a stripper that is kept wet', () => {
  function stripping(): { readonly day: Workday; readonly door: string } {
    const day = new Workday();
    const door = day.adds('Ash door', strip, at('8:00'));
    day.next(door, at('9:00'));
    return { day, door };
  }

  test('works, is scraped, and spoils when it dries on', () => {
    const { day, door } = stripping();
    expectStates(day.window(door, 'scrape'), {
      '9:14': 'before',
      '9:15': 'open',
      '9:20': 'closing',
      '9:30': 'late',
    });
  });

  test('topping up and covering begin the wait anew', () => {
    const { day, door } = stripping();
    day.does({ do: 'stamp', piece: door, part: null, event: 'topped-up' }, at('9:25'));
    expectStates(day.window(door, 'scrape'), { '9:39': 'before', '9:40': 'open', '9:55': 'late' });
    day.does({ do: 'stamp', piece: door, part: null, event: 'covered' }, at('9:50'));
    expectStates(day.window(door, 'scrape'), {
      '10:04': 'before',
      '10:05': 'open',
      '10:20': 'late',
    });
  });

  test('a test scrape that shows nothing adds its wait, one that lifts opens it at once', () => {
    const { day, door } = stripping();
    day.checks(door, 'not yet', at('9:16'));
    expectStates(day.window(door, 'scrape'), {
      '9:25': 'before',
      '9:26': 'closing',
      '9:30': 'late',
    });
    day.checks(door, 'ready', at('9:20'));
    expectStates(day.window(door, 'scrape'), { '9:19': 'open', '9:21': 'closing', '9:30': 'late' });
  });

  test('found ready early it opens before its label', () => {
    const { day, door } = stripping();
    day.checks(door, 'ready', at('9:08'));
    expectStates(day.window(door, 'scrape'), { '9:07': 'before', '9:08': 'open', '9:30': 'late' });
  });

  test('ends with the step', () => {
    const { day, door } = stripping();
    day.done(door, at('9:28'));
    expectStates(day.window(door, 'scrape'), { '9:27': 'closing', '9:28': 'done' });
  });
});
