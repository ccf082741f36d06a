import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewestForTrend, trendOf } from '../../../src/tracker/review/index.ts';

/** How many orders of so many values have each number of pairs the wrong way round (the Mahonian numbers). */
function inversionCounts(count: number): readonly number[] {
  let counts = [1];
  for (let size = 2; size <= count; size += 1) {
    const next = Array.from({ length: counts.length + size - 1 }, () => 0);
    for (const [place, ways] of counts.entries())
      for (let more = 0; more < size; more += 1)
        next[place + more] = (next[place + more] ?? 0) + ways;
    counts = next;
  }
  return counts;
}

/** The exact chance of a score so far from nought or farther, from counting all orders (Kendall, Rank Correlation Methods, ch. 5). */
function exactChance(count: number, score: number): number {
  const counts = inversionCounts(count);
  const pairs = (count * (count - 1)) / 2;
  const all = counts.reduce((sum, ways) => sum + ways, 0);
  const far = counts.reduce(
    (sum, ways, wrong) => sum + (Math.abs(pairs - 2 * wrong) >= Math.abs(score) ? ways : 0),
    0,
  );
  return far / all;
}

/** Values in order but for so many neighbours that are the wrong way round. */
function withSwaps(count: number, swaps: number): readonly number[] {
  const values = Array.from({ length: count }, (_, i) => i + 1);
  for (let i = 0; i < swaps; i += 1)
    [values[2 * i], values[2 * i + 1]] = [values[2 * i + 1] ?? 0, values[2 * i] ?? 0];
  return values;
}

describe('the drift of minutes against estimates', () => {
  it('gives the chance of luck that counting all orders gives, to a hundredth', () => {
    for (const count of [8, 10, 12, 14]) {
      for (const swaps of [0, 1, 2, 3, 4]) {
        const score = (count * (count - 1)) / 2 - 2 * swaps;
        const trend = trendOf(withSwaps(count, swaps));
        expect(trend?.direction).toBe('rising');
        expect(Math.abs((trend?.byLuck ?? 1) - exactChance(count, score))).toBeLessThan(0.01);
      }
    }
  });

  it('says nothing below eight values, and level where all are alike', () => {
    expect(trendOf(withSwaps(fewestForTrend - 1, 0))).toBeNull();
    expect(trendOf(Array.from({ length: 9 }, () => 1.2))).toEqual({
      direction: 'level',
      byLuck: 1,
    });
  });

  it('turns round with the values, and calls luck a drift about as seldom as it says', () => {
    let drifts = 0;
    const runs = 400;
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.1, max: 9, noNaN: true }), { minLength: 8, maxLength: 30 }),
        (values) => {
          const trend = trendOf(values);
          const back = trendOf(values.toReversed());
          expect(back?.byLuck).toBeCloseTo(trend?.byLuck ?? Number.NaN, 9);
          if (trend?.direction === 'level') expect(back?.direction).toBe('level');
          else drifts += 1;
        },
      ),
      { numRuns: runs, seed: 7 },
    );
    expect(drifts / runs).toBeLessThan(0.15);
  });
});
