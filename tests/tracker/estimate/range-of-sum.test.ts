import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Expectation } from '../../../src/tracker/bench/index.ts';
import { normalQuantile } from '../../../src/tracker/estimate/normal-quantile.ts';
import { rangeOfSum } from '../../../src/tracker/estimate/range-of-sum.ts';

const expected = (minutes: number, low: number, high: number, chance = 0.8): Expectation => ({
  minutes,
  low,
  high,
  chance,
  model: 'finishing schedule',
});

describe('normal quantile', () => {
  it('gives the check values that Wichura prints with AS 241', () => {
    expect(normalQuantile(0.25)).toBeCloseTo(-0.674489750196082, 6);
    expect(normalQuantile(0.001)).toBeCloseTo(-3.09023230616781, 6);
    expect(normalQuantile(1e-20) / -9.26234008979841).toBeCloseTo(1, 6);
  });

  it('gives the critical values of the NIST/SEMATECH e-Handbook, 1.3.6.7.1', () => {
    expect(normalQuantile(0.9)).toBeCloseTo(1.282, 3);
    expect(normalQuantile(0.95)).toBeCloseTo(1.645, 3);
    expect(normalQuantile(0.975)).toBeCloseTo(1.96, 3);
    expect(normalQuantile(0.5)).toBe(0);
  });

  it('is odd about one half and never endless', () => {
    for (const p of [0, 1e-9, 0.07, 0.08, 0.3, 0.5])
      expect(Number.isFinite(normalQuantile(p))).toBe(true);
    expect(normalQuantile(0.93)).toBeCloseTo(-normalQuantile(0.07), 6);
    expect(Number.isFinite(normalQuantile(1))).toBe(true);
  });
});

/** Standard normals from a seeded generator (mulberry32, Box and Muller 1958). */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

describe('range of several steps together', () => {
  const steps = [
    expected(20, 10, 40),
    expected(90, 48, 168),
    expected(45, 24, 84),
    expected(28, 17, 46),
    expected(35, 23, 54),
    expected(30, 19, 47),
  ];

  it('holds four in five sums of independent log-normal steps', () => {
    const range = rangeOfSum(steps);
    if (range === null) throw new Error('there are steps');
    const normal = normals(20_261_116);
    const draws = 20_000;
    let below = 0;
    let above = 0;
    for (let draw = 0; draw < draws; draw += 1) {
      const sum = steps.reduce((all, { minutes, low, high }) => {
        const spread = Math.log(high / low) / (2 * 1.2815515655446004);
        return all + minutes * Math.exp(spread * normal());
      }, 0);
      if (sum < range.low) below += 1;
      if (sum > range.high) above += 1;
    }
    expect(below / draws).toBeGreaterThan(0.08);
    expect(below / draws).toBeLessThan(0.12);
    expect(above / draws).toBeGreaterThan(0.08);
    expect(above / draws).toBeLessThan(0.12);
  });

  it('is narrower than the ends of the ranges added up, and keeps the chance', () => {
    const range = rangeOfSum(steps);
    const added = steps.reduce((sum, { low, high }) => sum + high - low, 0);
    expect((range?.high ?? 0) - (range?.low ?? 0)).toBeLessThan(0.6 * added);
    expect(range?.chance).toBe(0.8);
  });

  it('is the step itself for one, and null for none', () => {
    expect(rangeOfSum([expected(20, 9, 41)])).toEqual(expected(20, 9, 41));
    expect(rangeOfSum([])).toBeNull();
  });

  it('takes steps of fixed length as they are', () => {
    expect(rangeOfSum([expected(10, 10, 10), expected(5, 5, 5)])).toMatchObject({
      minutes: 15,
      low: 15,
      high: 15,
    });
  });

  it('stays a range of finite numbers whatever was stored', () => {
    const anything = fc.record({
      minutes: fc.double({ min: 0, max: 1e5, noNaN: true }),
      low: fc.double({ min: -10, max: 1e5, noNaN: true }),
      high: fc.double({ min: 0, max: 1e5, noNaN: true }),
      chance: fc.double({ min: 0, max: 1, noNaN: true }),
      model: fc.constantFrom('finishing schedule', 'another'),
    });
    fc.assert(
      fc.property(fc.array(anything, { minLength: 2, maxLength: 12 }), (stored) => {
        const range = rangeOfSum(stored);
        if (range === null) throw new Error('there are steps');
        expect([range.minutes, range.low, range.high].every(Number.isFinite)).toBe(true);
        expect(range.low).toBeLessThanOrEqual(range.minutes);
        expect(range.high).toBeGreaterThanOrEqual(range.minutes);
        expect(range.low).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
