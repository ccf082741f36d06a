import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cutOut,
  dot,
  rootOf,
  stretch,
  takeOff,
  times,
} from '../../../src/tracker/learning/symmetric.ts';

const whole = [
  [4, 12, -16],
  [12, 37, -43],
  [-16, -43, 98],
];

describe('symmetric matrices', () => {
  it('have the root that the usual worked example gives', () => {
    // The example of most texts on Cholesky's method; from memory.
    expect(rootOf(whole)).toEqual([[2], [6, 1], [-8, 5, 3]]);
  });

  it('give a root whose product with its transpose they are, also where they are singular', () => {
    const vectors = fc.array(
      fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })),
      {
        minLength: 1,
        maxLength: 6,
      },
    );
    fc.assert(
      fc.property(vectors, (rows) => {
        const made = rows.map(([a, b]) => rows.map(([c, d]) => a * c + b * d));
        const root = rootOf(made);
        const product = made.map((row, i) =>
          row.map((_, j) =>
            (root[i] ?? []).reduce((sum, value, k) => sum + value * (root[j]?.[k] ?? 0), 0),
          ),
        );
        for (const [i, row] of made.entries())
          for (const [j, value] of row.entries()) expect(product[i]?.[j]).toBeCloseTo(value, 4);
      }),
    );
  });

  it('multiply, stretch, and lose what one more row makes certain', () => {
    const sparse = [
      { at: 0, value: 1 },
      { at: 2, value: 2 },
    ];
    expect(times(whole, sparse)).toEqual([-28, -74, 180]);
    expect(dot([3, 5, 7], sparse)).toBe(17);
    expect(cutOut(whole, [2, 0])).toEqual([
      [98, -16],
      [-16, 4],
    ]);
    const making = whole.map((row) => [...row]);
    takeOff(making, [2, 6, -8], 1);
    expect(making).toEqual([
      [0, 0, 0],
      [0, 1, 5],
      [0, 5, 34],
    ]);
    stretch(making, [1, 2, 3]);
    expect(making).toEqual([
      [0, 0, 0],
      [0, 4, 30],
      [0, 30, 306],
    ]);
  });
});
