import { describe, expect, test } from 'vitest';
import { foldBench, type BenchFact } from '../../../src/tracker/bench/index.ts';
import { hour, minute, second, type Instant } from '../../../src/tracker/time/index.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { twoCoats } from '../support/schedules.ts';

/** A machine that started at 6:00 by a right clock, and whose clock is set now and then. */
const told = (
  facts: readonly BenchFact[],
  frames: readonly (readonly [upMs: number, byMs: number, bootId?: string])[],
): readonly BenchFact[] =>
  facts.map((fact, index) => {
    const [uptimeMs, byMs, bootId = 'boot'] = frames[index] ?? [0, 0];
    const shown: Instant = at('6:00') + uptimeMs + byMs;
    return { ...fact, at: shown, told: shown, uptimeMs, bootId };
  });

const inHand = past()
  .added('chest', twoCoats)
  .pickedUp('s', at('9:00'), [target('chest')])
  .putDown('s', at('9:30')).facts;

const minutesOf = (facts: readonly BenchFact[]): number => {
  const [session] = foldBench(facts).sessions;
  return ((session?.end ?? Number.NaN) - (session?.start ?? 0)) / minute;
};

describe('a clock that is set while a piece is in hand', () => {
  test.each([
    ['forward by minutes', 10 * minute],
    ['back by minutes', -10 * minute],
    ['forward by days', 72 * hour],
    ['back by days', -72 * hour],
  ])('%s leaves its minutes as they were', (_, byMs) => {
    const facts = told(inHand, [
      [0, 0],
      [3 * hour, 0],
      [3.5 * hour, byMs],
    ]);
    expect(minutesOf(facts)).toBe(30);
    expect(foldBench(facts).sessions[0]?.end).toBe(at('9:30') + byMs);
    expect(foldBench(facts).clockSteps).toEqual([{ at: at('9:30') + byMs, byMs }]);
  });

  test('forth and back again comes out where it began', () => {
    const facts = told(inHand, [
      [0, 0],
      [3 * hour, hour],
      [3.5 * hour, 0],
    ]);
    expect(foldBench(facts).sessions[0]).toMatchObject({ start: at('9:00'), end: at('9:30') });
  });

  test('by a second or two is every machine’s drift, and nothing', () => {
    const facts = told(inHand, [
      [0, 0],
      [3 * hour, 0],
      [3.5 * hour, 2 * second],
    ]);
    expect(foldBench(facts).clockSteps).toEqual([]);
    expect(foldBench(facts).sessions[0]?.start).toBe(at('9:00'));
  });

  test('before another start of the machine moves nothing: nobody knows how long it was off', () => {
    const facts = told(inHand, [
      [0, 0],
      [3 * hour, 0],
      [minute, 3.5 * hour - minute + 10 * minute, 'next boot'],
    ]);
    expect(foldBench(facts).clockSteps).toEqual([]);
    expect(minutesOf(facts)).toBe(40);
  });

  test('with facts of that piece back from the history at the end goes by the machine’s time, not the order', () => {
    const facts = told(inHand, [
      [0, 0],
      [3 * hour, 0],
      [3.5 * hour, hour],
    ]);
    const [added, picked, down] = facts;
    if (added === undefined || picked === undefined || down === undefined) throw new Error('three');
    expect(minutesOf([added, picked, down])).toBe(30);
    expect(foldBench([down, added, picked]).clockSteps).toHaveLength(1);
  });
});

test('a clock set since the last fact moves what runs at once', () => {
  const facts = told(inHand.slice(0, 2), [
    [0, 0],
    [3 * hour, 0],
  ]);
  const present = { told: at('9:10') + hour, uptimeMs: 3 * hour + 10 * minute, bootId: 'boot' };
  const bench = foldBench(facts, undefined, present);
  expect(bench.sessions[0]?.start).toBe(at('10:00'));
  expect(foldBench(facts, bench).sessions[0]?.start).toBe(at('9:00'));
});

test('instants that a correction names move along, and planned ones stay', () => {
  const facts = told(
    [
      ...inHand,
      ...past().told('session-corrected', {
        session: 's',
        start: at('9:10'),
        end: at('9:20'),
        targets: [target('chest')],
        dropped: false,
      }).facts,
      ...past().told('note-written', { piece: 'chest', step: null, text: 'x' }).facts,
    ],
    [
      [0, 0],
      [3 * hour, 0],
      [3.5 * hour, 0],
      [4 * hour, 0],
      [5 * hour, hour],
    ],
  );
  expect(foldBench(facts).sessions[0]).toMatchObject({ start: at('10:10'), end: at('10:20') });
});
