import { describe, expect, test } from 'vitest';
import { pingsOfBench } from '../../../src/tracker/bench/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

const chest = past().added('chest', twoCoats, { name: 'Oak chest' });
const start = { do: 'start timer', label: 'clamps', ms: 35 * minute, piece: null } as const;

describe('an odd timer', () => {
  test('belongs to no piece, or to one', () => {
    given(chest)
      .when({ ...start, label: ' clamps ' }, at('9:00'))
      .then({
        kind: 'timer-started',
        body: { timer: 'this-press', piece: null, label: 'clamps', ms: 35 * minute },
      });
    given(chest)
      .when({ ...start, piece: 'chest' }, at('9:00'))
      .then({ kind: 'timer-started', body: { piece: 'chest' } });
    given(chest)
      .when({ ...start, piece: 'chest' }, at('9:00'))
      .thenSays('clamps, 35 min on 1 Oak chest');
  });

  test.each([
    [{ label: ' ' }, 'Not started: say what it is for: "clamps, 35 min".'],
    [{ ms: 0 }, 'Not started: a timer needs a length of time: "clamps, 35 min".'],
    [{ ms: -5 * minute }, /needs a length of time/],
    [{ ms: Number.NaN }, /needs a length of time/],
    [{ ms: Number.POSITIVE_INFINITY }, /needs a length of time/],
    [{ piece: 'chets' }, 'Not started: there is no piece "chets".'],
  ])('refuses %j', (more, words) => {
    given(chest)
      .when({ ...start, ...more }, at('9:00'))
      .thenRefused(words);
  });

  test('outlives the piece that leaves', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ ...start, piece }, at('9:00')).does({ do: 'take off bench', piece }, at('9:05'));
    expect(day.standings(at('9:10'))).toMatchObject([
      { piece: null, timer: { label: 'clamps', piece } },
    ]);
    expect(pingsOfBench(day.bench, at('9:10'), day.sense)).toMatchObject([
      { at: at('9:35'), piece: null },
    ]);
  });

  test('names the piece that it is for in its ping', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ ...start, piece }, at('9:00'));
    expect(pingsOfBench(day.bench, at('9:10'), day.sense)).toMatchObject([
      { at: at('9:35'), piece: { name: 'Oak chest' }, timer: { label: 'clamps' } },
    ]);
  });
});

describe('closing it', () => {
  const running = chest.told(
    'timer-started',
    { timer: 't', piece: null, label: 'clamps', ms: minute },
    { at: at('9:00') },
  );

  test('ends it', () => {
    given(running)
      .when({ do: 'close timer', timer: 't' }, at('9:05'))
      .then({ kind: 'timer-closed', body: { timer: 't' } });
  });

  test('once, after its start, and only where there is one', () => {
    given(running.told('timer-closed', { timer: 't' }, { at: at('9:02') }))
      .when({ do: 'close timer', timer: 't' }, at('9:05'))
      .thenRefused('Not closed: clamps is closed already.');
    given(running)
      .when({ do: 'close timer', timer: 't' }, at('9:05'), { at: at('8:59') })
      .thenRefused('Not closed: clamps was started after that. Give a later time.');
    given(running)
      .when({ do: 'close timer', timer: 'x' }, at('9:05'))
      .thenRefused('Not closed: there is no timer "x".');
  });
});
