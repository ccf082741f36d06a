import { describe, expect, test } from 'vitest';
import { closesAt } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import { glueUp } from '../support/schedules.ts';
import { expectStates } from '../support/walk.ts';
import { Workday } from '../support/workday.ts';

describe('glue in clamps', () => {
  function gluing(): { readonly day: Workday; readonly chair: string } {
    const day = new Workday();
    const chair = day.adds('Dining chair', glueUp, at('8:00'));
    return { day: day.next(chair, at('9:00')), chair };
  }

  test('must be in clamps before it skins over', () => {
    const { day, chair } = gluing();
    expectStates(day.window(chair, 'assemble'), {
      '9:00': 'closing',
      '9:04': 'closing',
      '9:05': 'late',
    });
    day.next(chair, at('9:03'));
    expectStates(day.window(chair, 'assemble'), {
      '9:02': 'closing',
      '9:03': 'done',
      '9:06': 'done',
    });
  });

  test('stays in clamps, and nothing is lost by leaving it there', () => {
    const { day, chair } = gluing();
    day.next(chair, at('9:03'));
    const window = day.window(chair, 'clamps-off');
    expectStates(window, { '9:03': 'before', '9:32': 'before', '9:33': 'open', '30:00': 'open' });
    expect(closesAt(window, at('9:10'))).toBeNull();
    day.done(chair, at('9:05'));
    expect(day.window(chair, 'clamps-off').begunAt).toBe(at('9:03'));
  });

  test('counts from the finish where nobody told of clamps', () => {
    const { day, chair } = gluing();
    day.done(chair, at('9:04'));
    expectStates(day.window(chair, 'assemble'), { '9:04': 'done' });
    expectStates(day.window(chair, 'clamps-off'), { '9:33': 'before', '9:34': 'open' });
  });

  test('is done when the clamps come off, though the step was done long before', () => {
    const { day, chair } = gluing();
    day.next(chair, at('9:03')).done(chair, at('9:05')).does({ do: 'put down' }, at('9:06'));
    day.does({ do: 'stamp', piece: chair, part: null, event: 'clamps-off' }, at('10:00'));
    expectStates(day.window(chair, 'clamps-off'), { '9:59': 'open', '10:00': 'done' });
  });

  test('is done when the step that needs it begins without a word', () => {
    const { day, chair } = gluing();
    day.next(chair, at('9:03')).done(chair, at('9:05')).done(chair, at('10:00'));
    expectStates(day.window(chair, 'clamps-off'), { '9:59': 'open', '10:00': 'done' });
  });
});

describe('an odd timer', () => {
  test('is a window like any other: it waits, then it is open, until it is closed', () => {
    const day = new Workday();
    day.does({ do: 'start timer', label: 'clamps', ms: 35 * 60_000, piece: null }, at('9:00'));
    const [row] = day.standings(at('9:10'));
    expect(row).toMatchObject({ piece: null, timer: { label: 'clamps' }, rank: 'costs nothing' });
    expectStates(row!.window!, {
      '9:00': 'before',
      '9:34': 'before',
      '9:35': 'open',
      '20:00': 'open',
    });
    day.does({ do: 'close timer', timer: row!.timer!.id }, at('9:40'));
    expect(day.standings(at('9:41'))).toEqual([]);
  });

  test('on a piece it has a row of its own, whatever else runs there, and is closed by itself', () => {
    const day = new Workday();
    const chair = day.adds('Dining chair', glueUp, at('8:00'));
    day.does({ do: 'start timer', label: 'heat lamp', ms: 10 * 60_000, piece: chair }, at('9:00'));
    day.does({ do: 'pick up', targets: [{ piece: chair, part: null }] }, at('9:01'));
    const rows = day.standings(at('9:05'));
    const own = rows.find(({ timer }) => timer !== null);
    expect(rows).toHaveLength(2);
    expect(own?.timer).toMatchObject({ label: 'heat lamp', piece: chair });
    day.does({ do: 'close timer', timer: own?.timer?.id ?? '' }, at('9:06'));
    expect(day.standings(at('9:07')).map(({ key }) => key)).toEqual([chair]);
  });
});
