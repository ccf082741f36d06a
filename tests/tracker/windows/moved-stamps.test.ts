import { describe, expect, test } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { opensAt, pingsOf } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import { bleachAndClear, twoCoats } from '../support/schedules.ts';
import { expectStates } from '../support/walk.ts';
import { Workday } from '../support/workday.ts';

const earlier = (piece: string, ms?: number) =>
  ({ do: 'move stamp', piece, earlier: true, ...(ms === undefined ? {} : { ms }) }) as const;

describe('a stamp that is moved moves the edges that hang on it', () => {
  test('a dwell by a minute a press', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
    day.done(chest, at('8:40')).next(chest, at('9:00'));
    day.does(earlier(chest), at('9:01')).does(earlier(chest), at('9:01'));
    expectStates(day.window(chest, 'b-on'), {
      '9:07': 'before',
      '9:08': 'closing',
      '9:18': 'late',
    });
  });

  test('a coat by five: the last stroke moves the openings, the first the closings', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    day.firstStroke(table, at('9:00')).does(earlier(table), at('9:01'));
    day.done(table, at('9:30')).does(earlier(table), at('9:31'));
    expectStates(day.window(table, 'recoat'), {
      '11:24': 'before',
      '11:25': 'open',
      '32:54': 'closing',
      '32:55': 'late',
    });
  });

  test('a check too', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    day.firstStroke(table, at('9:00')).done(table, at('9:30'));
    day
      .checks(table, 'not yet', at('11:40'), 'recoat')
      .does(earlier(table, 4 * minute), at('11:41'));
    expect(opensAt(day.window(table, 'recoat'))).toBe(at('12:06'));
  });

  test('the window keeps its key and the names of its pings', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
    day.done(chest, at('8:40')).next(chest, at('9:00'));
    const before = day.window(chest, 'b-on');
    day.does(earlier(chest), at('9:01'));
    const moved = day.window(chest, 'b-on');
    expect(moved.key).toBe(before.key);
    expect(pingsOf(moved).map(({ key }) => key)).toEqual(pingsOf(before).map(({ key }) => key));
    expect(pingsOf(moved)[0]?.at).toBe(pingsOf(before)[0]!.at - minute);
  });

  test('taking the move back puts the edge where it was', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
    day.done(chest, at('8:40')).next(chest, at('9:00'));
    const before = day.windows(chest);
    day.does(earlier(chest), at('9:01')).takesBack(at('9:02'));
    expect(day.windows(chest)).toEqual(before);
  });
});

test('a clock that was set back does not keep a dwell from closing', () => {
  const day = new Workday();
  const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
  day.done(chest, at('8:40')).next(chest, at('9:50'));
  // Ten minutes later the clock shows an hour less.
  day.next(chest, at('9:00'));
  expectStates(day.window(chest, 'b-on'), { '9:00': 'done', '10:30': 'done' });
});
