import { describe, expect, test } from 'vitest';
import { nameGroup, pieceMinutes, sessionsOf } from '../../../src/tracker/bench/index.ts';
import { hoursOfPiece } from '../../../src/tracker/estimate/index.ts';
import { at } from '../support/instants.ts';
import { given } from '../support/given-when-then.ts';
import { past, target } from '../support/past.ts';
import { bleachAndClear, twoCoats } from '../support/schedules.ts';
import { expectStates } from '../support/walk.ts';
import { Workday } from '../support/workday.ts';

/** Three stools of one schedule and a chest of another, of which the last has further to go. */
function shop(): { day: Workday; a: string; b: string; c: string; chest: string } {
  const day = new Workday();
  const [a, b, c] = ['Stool', 'Bench', 'Box'].map((name) => day.adds(name, twoCoats, at('8:00')));
  const chest = day.adds('Chest', bleachAndClear, at('8:00'));
  return { day, a: a!, b: b!, c: c!, chest };
}
const along = (piece: string, part: string | null = null) =>
  ({ do: 'take along', piece, part }) as const;

describe('several pieces in one go', () => {
  test('a piece joins what is in hand, at its like step', () => {
    const { day, a, b, chest } = shop();
    day.does({ do: 'pick up', targets: [{ piece: a, part: null }] }, at('9:00'));
    day.does(along(b), at('9:01'));
    expect(day.said).toBe('2 Bench taken along, coat 1');
    day.does(along(chest), at('9:02'));
    expect(day.said).toBe('4 Chest taken along, coat 1');
    expect(day.bench.sessions).toHaveLength(1);
    expect(day.bench.sessions[0]?.targets).toEqual([
      target(a, 'coat 1'),
      target(b, 'coat 1'),
      target(chest, 'coat 1'),
    ]);
  });

  test('a piece joins no go at a time at which that had not begun', () => {
    const held = past()
      .added('chest', twoCoats, { number: 1, name: 'Oak chest' })
      .added('table', twoCoats, { number: 2, name: 'Side table' })
      .pickedUp('s1', at('9:00'), [target('chest', 'coat 1')]);
    given(held)
      .when(along('table'), at('9:30'), { at: at('8:59') })
      .thenRefused('Not taken along: 1 Oak chest was picked up after that. Give a later time.');
    given(held)
      .when(along('table'), at('9:30'), { at: at('9:00') })
      .then({ kind: 'targets-changed', body: { session: 's1' } });
  });

  test('with two pairs of hands a piece joins those that picked up last', () => {
    const both = past()
      .added('chest', twoCoats, { number: 1 })
      .added('table', twoCoats, { number: 2 })
      .added('stool', twoCoats, { number: 3 })
      .pickedUp('s1', at('9:00'), [target('chest', 'coat 1')])
      .pickedUp('s2', at('9:10'), [target('table', 'coat 1')], 2);
    given(both)
      .when(along('stool'), at('9:20'), { hands: 2 })
      .then({
        kind: 'targets-changed',
        body: { session: 's2', targets: [target('table', 'coat 1'), target('stool', 'coat 1')] },
      });
  });

  test('a piece that was worked in an earlier go only can be taken out of this one', () => {
    const held = past()
      .added('chest', twoCoats, { number: 1 })
      .added('table', twoCoats, { number: 2 })
      .stamped('table', 'coat 1', 'first-stroke', at('8:30'))
      .pickedUp('s1', at('9:00'), [target('chest', 'coat 1'), target('table', 'coat 1')]);
    given(held)
      .when(along('table'), at('9:05'))
      .then({ kind: 'targets-changed', body: { targets: [target('chest', 'coat 1')] } });
    given(held.stamped('table', 'coat 1', 'topped-up', at('9:03')))
      .when(along('table'), at('9:05'))
      .thenRefused(/was worked in this go/);
  });

  test('with nothing in hand it is picked up', () => {
    const { day, a } = shop();
    day.does(along(a), at('9:00'));
    expect(day.bench.sessions[0]?.targets).toEqual([target(a, 'coat 1')]);
  });

  test('each is stamped and finished by itself, and the go goes on for the others', () => {
    const { day, a, b } = shop();
    day.does({ do: 'pick up', targets: [{ piece: a, part: null }] }, at('9:00'));
    day.does(along(b), at('9:01'));
    day.next(a, at('9:05')).done(a, at('9:20')).next(b, at('9:21')).done(b, at('9:40'));
    expect(day.bench.sessions).toHaveLength(1);
    expect(day.bench.sessions[0]?.end).toBeNull();
    expectStates(day.window(a, 'recoat'), { '11:19': 'before', '11:20': 'open' });
    expectStates(day.window(b, 'recoat'), { '11:39': 'before', '11:40': 'open' });
    day.does({ do: 'put down' }, at('9:50'));
    expect(day.said).toBe('put down 1 Stool and 2 Bench');
    expect(day.bench.sessions[0]?.end).toBe(at('9:50'));
  });

  test('a key too many on one that is done does not put the others down', () => {
    const { day, a, b } = shop();
    day.does({ do: 'pick up', targets: [{ piece: a, part: null }] }, at('9:00'));
    day.does(along(b), at('9:01')).next(a, at('9:05')).done(a, at('9:20'));
    const says =
      'Not stamped: 1 Stool is done in this go; 2 Bench is not. Enter puts all of it down.';
    expect(day.tries({ do: 'next stamp', piece: a, part: null }, at('9:25'))).toBe(says);
    expect(day.tries({ do: 'first stroke', piece: a, part: null }, at('9:25'))).toBe(says);
    day.next(b, at('9:26')).done(b, at('9:40'));
    // Once all are done the next step may begin as ever.
    expect(day.tries({ do: 'next stamp', piece: a, part: null }, at('12:00'))).toBeNull();
  });

  test('once more takes it out again, but not what was worked, nor the last', () => {
    const { day, a, b, c } = shop();
    day.does({ do: 'pick up', targets: [{ piece: a, part: null }] }, at('9:00'));
    expect(day.tries(along(a), at('9:01'))).toBe(
      'Not taken out: 1 Stool is all there is in hand. Enter puts it down.',
    );
    day.does(along(b), at('9:02')).does(along(c), at('9:03')).next(b, at('9:05'));
    day.does(along(c), at('9:06'));
    expect(day.said).toBe('3 Box taken out');
    expect(day.tries(along(b), at('9:07'))).toMatch(
      /^Not taken out: 2 Bench was worked in this go/,
    );
    expect(day.bench.sessions[0]?.targets.map(({ piece }) => piece)).toEqual([a, b]);
  });

  test('what was stamped by the very key that picked it up was worked', () => {
    const { day, a, b } = shop();
    const targets = [a, b].map((piece) => ({ piece, part: null }));
    day.does({ do: 'pick up', targets }, at('9:00')).next(b, at('9:00'));
    expect(day.tries(along(b), at('9:07'))).toMatch(/^Not taken out: 2 Bench was worked/);
  });

  test('taking back undoes the taking along alone', () => {
    const { day, a, b } = shop();
    day.does({ do: 'pick up', targets: [{ piece: a, part: null }] }, at('9:00'));
    day.does(along(b), at('9:01'));
    expect(nameGroup(day.bench, day.bench.groups.get(day.bench.trail.done.at(-1)!)!)).toBe(
      'in hand: coat 1 on 1 Stool, coat 1 on 2 Bench',
    );
    day.takesBack(at('9:02'));
    expect(day.bench.sessions[0]?.targets).toEqual([target(a, 'coat 1')]);
    expect(sessionsOf(day.bench, b)).toEqual([]);
  });

  test('a part goes along beside its sister', () => {
    const { day, a } = shop();
    day.does({ do: 'name parts', piece: a, names: ['case', 'drawers'] }, at('8:30'));
    const [first, second] = day.piece(a).parts.map(({ id }) => id);
    day.does({ do: 'pick up', targets: [{ piece: a, part: first! }] }, at('9:00'));
    day.does(along(a, second), at('9:01'));
    expect(day.bench.sessions[0]?.targets.map(({ part }) => part)).toEqual([first, second]);
  });

  test('several can be picked up at once, each at its like step', () => {
    const before = past().added('chest', bleachAndClear).added('stool', twoCoats, { number: 2 });
    given(before)
      .when(
        {
          do: 'pick up',
          targets: [
            { piece: 'stool', part: null },
            { piece: 'chest', part: null },
          ],
        },
        at('9:00'),
      )
      .then({
        kind: 'picked-up',
        body: { targets: [target('stool', 'coat 1'), target('chest', 'coat 1')] },
      });
  });

  test('a piece with nothing left to do is refused', () => {
    const { day, a, b } = shop();
    for (const step of day.piece(b).steps)
      day.does({ do: 'skip step', piece: b, step: step.id, skipped: true }, at('8:30'));
    day.does({ do: 'pick up', targets: [{ piece: a, part: null }] }, at('9:00'));
    expect(day.tries(along(b), at('9:01'))).toMatch(
      /^Not taken along: every step of 2 Bench is done/,
    );
  });
});

describe('the minutes of one go', () => {
  test('are shared by size, and a piece whose size nobody told has an equal share', () => {
    const { day, a, b, c } = shop();
    day.does({ do: 'describe piece', piece: a, changes: { areaM2: 3 } }, at('8:10'));
    day.does({ do: 'describe piece', piece: b, changes: { areaM2: 1 } }, at('8:10'));
    day.does({ do: 'pick up', targets: [{ piece: a, part: null }] }, at('9:00'));
    day.does(along(b), at('9:01')).does(along(c), at('9:02')).does({ do: 'put down' }, at('10:00'));
    const minutes = [a, b, c].map((id) => pieceMinutes(day.bench, day.piece(id), at('11:00')));
    expect(minutes).toEqual([30, 10, 20]);
  });

  test('pay setup once, whenever a piece came along', () => {
    const { day, a, b } = shop();
    day.does({ do: 'pick up', targets: [{ piece: a, part: null }] }, at('9:00'));
    day.next(a, at('9:10')).done(a, at('9:30')).does(along(b), at('9:31'));
    day.next(b, at('9:32')).done(b, at('9:52')).does({ do: 'put down' }, at('10:00'));
    const hours = [a, b].map((id) => hoursOfPiece(day.bench, day.piece(id), at('11:00')));
    // 10 min to the first stroke and 8 after the last finish: 9 for each of two pieces of one size.
    expect(hours.map(({ setup }) => setup.minutes)).toEqual([9, 9]);
    expect(hours.map(({ setup }) => setup.expected)).toEqual([5, 5]);
    expect(hours.map(({ recorded }) => recorded)).toEqual([30, 30]);
  });
});
