import { describe, expect, test } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import {
  bleachAndClear,
  glueUp,
  stainInSections,
  twoCoats,
  twoPart,
} from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

const move = (earlier: boolean, ms?: number) =>
  ({ do: 'move stamp', piece: 'chest', earlier, ...(ms === undefined ? {} : { ms }) }) as const;
const coated = past().added('chest', twoCoats, { name: 'Oak chest', at: at('8:00') });
const stroke = coated.stamped('chest', 'coat 1', 'first-stroke', at('9:00'));

describe('how far one press moves', () => {
  test('a coat by five minutes, either way', () => {
    given(stroke)
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { fact: 'fact-2', to: at('8:55') } });
    given(stroke)
      .when(move(false), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('9:05') } });
    given(stroke.done('chest', 'coat 1', at('9:30')))
      .when(move(true), at('9:40'))
      .then({ kind: 'stamp-moved', body: { to: at('9:25') } });
  });

  test('the mixing and the washing out of a pot by one, each press from where it stands', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoPart, at('8:00'));
    const moves = (earlier: boolean, now: number) =>
      day.does({ do: 'move stamp', piece: chest, earlier }, now);
    day.next(chest, at('9:00'));
    moves(true, at('9:10'));
    moves(true, at('9:11'));
    expect(day.bench.pots[0]?.mixedAt).toBe(at('8:58'));
    day.firstStroke(chest, at('9:20'));
    day.does({ do: 'stamp', piece: chest, part: null, event: 'washed-out' }, at('10:00'));
    moves(true, at('10:10'));
    moves(true, at('10:11'));
    expect(day.bench.pots[0]?.washedAt).toBe(at('9:58'));
  });

  test('a dwell, glue and minutes by one', () => {
    const bleached = past()
      .added('chest', bleachAndClear)
      .stamped('chest', 'bleach', 'first-stroke', at('9:00'), { agent: 'A' });
    given(bleached)
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('8:59') } });
    const glued = past()
      .added('chest', glueUp)
      .stamped('chest', 'glue', 'first-stroke', at('9:00'));
    given(glued)
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('8:59') } });
    const stained = past()
      .added('chest', stainInSections)
      .stamped('chest', 'stain', 'section-on', at('9:00'), { section: 1 });
    given(stained)
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('8:59') } });
    given(coated.pickedUp('s', at('9:00'), [target('chest', 'coat 1')]))
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('8:59') } });
  });

  test('what ends a dwell by one, too: a minute decides', () => {
    const followed = past()
      .added('chest', bleachAndClear)
      .stamped('chest', 'bleach', 'first-stroke', at('9:00'), { agent: 'A' })
      .stamped('chest', 'bleach', 'first-stroke', at('9:12'), { agent: 'B' });
    given(followed)
      .when(move(true), at('9:20'))
      .then({ kind: 'stamp-moved', body: { to: at('9:11') } });
    const wiped = past()
      .added('chest', stainInSections)
      .stamped('chest', 'stain', 'section-on', at('9:00'), { section: 1 })
      .stamped('chest', 'stain', 'section-off', at('9:08'), { section: 1 });
    given(wiped)
      .when(move(true), at('9:20'))
      .then({ kind: 'stamp-moved', body: { to: at('9:07') } });
  });

  test('the last of a bleach is the beginning of a long wait', () => {
    const bleached = past()
      .added('chest', bleachAndClear)
      .stamped('chest', 'bleach', 'first-stroke', at('9:00'), { agent: 'A' })
      .done('chest', 'bleach', at('9:30'));
    given(bleached)
      .when(move(true), at('9:40'))
      .then({ kind: 'stamp-moved', body: { to: at('9:25') } });
  });

  test('or by as much as is given', () => {
    given(stroke)
      .when(move(true, 7 * minute), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('8:53') } });
    given(stroke)
      .when(move(true, 7 * minute), at('9:10'))
      .thenSays('first stroke on, coat 1 on 1 Oak chest 7 min earlier');
  });

  test.each([0, -minute, Number.NaN])('but not by %s', (ms) => {
    given(stroke)
      .when(move(true, ms), at('9:10'))
      .thenRefused('Not moved: give a length of time, such as 5 min.');
  });
});

describe('what it moves', () => {
  test('everything that the last key press on the piece put at an instant', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'pick up', targets: [{ piece: table, part: null }] }, at('8:30'));
    day
      .firstStroke(chest, at('9:00'))
      .does({ do: 'move stamp', piece: chest, earlier: true }, at('9:01'));
    expect(day.bench.sessions.map(({ start, end }) => [start, end])).toEqual([
      [at('8:30'), at('8:55')],
      [at('8:55'), null],
    ]);
    expect(day.piece(chest).stamps[0]?.at).toBe(at('8:55'));
  });

  test('the last one on this piece, though others were pressed elsewhere since', () => {
    const two = stroke
      .added('table', twoCoats, { number: 2 })
      .stamped('table', 'coat 1', 'first-stroke', at('9:05'));
    given(two)
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { fact: 'fact-2' } });
  });

  test('again and again, from where it stands', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.firstStroke(chest, at('9:00'));
    for (const clock of ['9:01', '9:02', '9:03'])
      day.does({ do: 'move stamp', piece: chest, earlier: true }, at(clock));
    expect(day.piece(chest).stamps[0]?.at).toBe(at('8:45'));
    day.takesBack(at('9:04'));
    expect(day.piece(chest).stamps[0]?.at).toBe(at('8:50'));
  });

  test('of a press that was for another piece, the putting down alone', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'pick up', targets: [{ piece: table, part: null }] }, at('8:30'));
    day.firstStroke(chest, at('9:00'));
    day.does({ do: 'move stamp', piece: table, earlier: true }, at('9:01'));
    expect(day.said).toBe('put down 1 Side table 1 min earlier');
    expect(day.bench.sessions.map(({ start, end }) => [start, end])).toEqual([
      [at('8:30'), at('8:59')],
      [at('9:00'), null],
    ]);
    expect(day.piece(chest).stamps[0]?.at).toBe(at('9:00'));
  });

  test('by less than a minute where what came before it is that near, and says so', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'pick up', targets: [{ piece: chest, part: null }] }, at('8:30'));
    day.does({ do: 'put down', piece: chest }, at('8:30') + 20_000);
    day.does({ do: 'move stamp', piece: chest, earlier: true }, at('8:31'));
    expect(day.said).toBe('put down 1 Oak chest 20 s earlier, as far as it goes');
  });

  test('a timer on the piece', () => {
    const timer = coated.told(
      'timer-started',
      { timer: 't', piece: 'chest', label: 'clamps', ms: 35 * minute },
      { at: at('9:00') },
    );
    given(timer)
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { fact: 'fact-2', to: at('8:59') } });
  });

  test('nothing where nothing was stamped', () => {
    given(coated)
      .when(move(true), at('9:10'))
      .thenRefused('Not moved: nothing was stamped on 1 Oak chest.');
    given(past()).when(move(true), at('9:10')).thenRefused('Not moved: there is no piece "chest".');
  });
});

describe('how far it can be moved', () => {
  test('not past now', () => {
    given(stroke)
      .when(move(false), at('9:02'))
      .then({ kind: 'stamp-moved', body: { to: at('9:02') } });
    given(stroke)
      .when(move(false), at('9:00'))
      .thenRefused('Not moved: later than this would be past now.');
  });

  test('nor past what a script told of the same instant, either way', () => {
    const both = coated
      .stamped('chest', 'coat 1', 'first-stroke', at('9:00'), { by: 'script' })
      .done('chest', 'coat 1', at('9:00'));
    given(both)
      .when(move(true), at('9:10'))
      .thenRefused(/what came before it/);
    given(both)
      .when(move(false), at('9:10'))
      .thenRefused(/what came after it/);
  });

  test('not past what came before it on the piece', () => {
    const done = stroke.done('chest', 'coat 1', at('9:03'));
    given(done)
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('9:00') } });
    given(stroke.done('chest', 'coat 1', at('9:00')))
      .when(move(true), at('9:10'))
      .thenRefused('Not moved: what came before it on 1 Oak chest was at the same time.');
  });

  test('not past the adding of the piece', () => {
    given(coated.stamped('chest', 'coat 1', 'first-stroke', at('8:02')))
      .when(move(true), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('8:00') } });
  });

  test('not past the end of what these hands held before', () => {
    const both = coated
      .added('table', twoCoats, { number: 2 })
      .pickedUp('s1', at('8:30'), [target('table', 'coat 1')])
      .putDown('s1', at('8:58'))
      .pickedUp('s2', at('9:00'), [target('chest', 'coat 1')]);
    given(both)
      .when(move(true, 10 * minute), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('8:58') } });
  });

  test('not past an end that a correction gave', () => {
    const both = coated
      .added('table', twoCoats, { number: 2 })
      .pickedUp('s1', at('8:30'), [target('table', 'coat 1')])
      .told('session-corrected', {
        session: 's1',
        start: at('8:30'),
        end: at('8:50'),
        targets: [target('table')],
        dropped: false,
      })
      .pickedUp('s2', at('9:00'), [target('chest', 'coat 1')]);
    given(both)
      .when(move(true, 30 * minute), at('9:10'))
      .then({ kind: 'stamp-moved', body: { to: at('8:50') } });
  });

  test('a put-down not past what these hands picked up next', () => {
    const both = coated
      .added('table', twoCoats, { number: 2 })
      .pickedUp('s1', at('9:00'), [target('chest', 'coat 1')])
      .putDown('s1', at('9:20'))
      .pickedUp('s2', at('9:22'), [target('table', 'coat 1')]);
    given(both)
      .when(move(false, 10 * minute), at('9:40'))
      .then({ kind: 'stamp-moved', body: { to: at('9:22') } });
  });

  test('of two events at one instant the one told first stays first', () => {
    const both = stroke
      .stamped('chest', 'coat 1', 'last-stroke', at('9:00'))
      .pickedUp('s', at('9:00'), [target('chest', 'coat 1')]);
    given(both)
      .when(move(true), at('9:10'))
      .thenRefused('Not moved: what came before it on 1 Oak chest was at the same time.');
    // Told first and moved last: the later one is in the way.
    const first = coated
      .stamped('chest', 'coat 1', 'first-stroke', at('9:00'))
      .stamped('chest', 'coat 1', 'last-stroke', at('9:00'), { by: 'script' });
    given(first)
      .when(move(false), at('9:10'))
      .thenRefused('Not moved: later than this would be past what came after it.');
  });

  test('asked for earlier, it never goes later, also after the clock was set back', () => {
    const ahead = past()
      .added('chest', twoCoats, { at: at('9:30') })
      .stamped('chest', 'coat 1', 'first-stroke', at('9:00'));
    given(ahead)
      .when(move(true), at('9:10'))
      .thenRefused(/^Not moved: what came before it/);
    const worked = coated
      .pickedUp('s1', at('9:00'), [target('chest', 'coat 1')])
      .putDown('s1', at('9:30'))
      .pickedUp('s2', at('9:30'), [target('chest', 'coat 2')]);
    given(worked)
      .when(move(true, 20 * minute), at('9:20'))
      .thenRefused(/^Not moved: what came before it/);
    given(coated.stamped('chest', 'coat 1', 'first-stroke', at('10:00')))
      .when(move(false), at('9:10'))
      .thenRefused('Not moved: later than this would be past now.');
  });
});
