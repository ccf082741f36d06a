import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleQuantile } from '../../../src/tracker/estimate/index.ts';

describe('sample quantile of type 7', () => {
  it('agrees with R 4.2.2, quantile(x, p, type = 7)', () => {
    const sample = [12, 7, 3, 44, 21, 9, 18, 30, 5];
    const expected: readonly (readonly [number, number])[] = [
      [0.1, 4.6],
      [0.25, 7],
      [0.5, 12],
      [0.75, 21],
      [0.9, 32.8],
    ];
    for (const [p, value] of expected) expect(sampleQuantile(sample, p)).toBeCloseTo(value, 12);
  });

  it('is not one of the neighbouring types of Hyndman and Fan', () => {
    // Types 6 and 8 of the same sample at 0.9 in R 4.2.2.
    const sample = [12, 7, 3, 44, 21, 9, 18, 30, 5];
    expect(sampleQuantile(sample, 0.9)).not.toBeCloseTo(44, 3);
    expect(sampleQuantile(sample, 0.9)).not.toBeCloseTo(40.2667, 3);
  });

  it('agrees with the "1 + p(N - 1)" percentile of the NIST/SEMATECH e-Handbook, 7.2.6.2 (figures from memory)', () => {
    const gauge = [
      95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925,
      95.199, 95.1682,
    ];
    expect(sampleQuantile(gauge, 0.9)).toBeCloseTo(95.1957, 4);
  });

  it('is null for no sample, the value itself for one, and leaves out what is no number', () => {
    expect(sampleQuantile([], 0.5)).toBeNull();
    expect(sampleQuantile([Number.NaN], 0.5)).toBeNull();
    expect(sampleQuantile([7], 0.1)).toBe(7);
    expect(sampleQuantile([Number.NaN, 4, 2], 0.5)).toBe(3);
  });

  it('lies within the sample and never falls as the share grows', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 30 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (sample, one, other) => {
          const low = sampleQuantile(sample, Math.min(one, other)) ?? Number.NaN;
          const high = sampleQuantile(sample, Math.max(one, other)) ?? Number.NaN;
          expect(low).toBeGreaterThanOrEqual(Math.min(...sample));
          expect(high).toBeLessThanOrEqual(Math.max(...sample) + 1e-9);
          expect(high - low).toBeGreaterThanOrEqual(-1e-9);
        },
      ),
    );
  });
});
