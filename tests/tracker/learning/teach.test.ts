import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  foreseenMinutes,
  foreseenTotal,
  nothingLearned,
  teach,
  usualPrior,
  type LearnedMinutes,
  type MinutesPrior,
  type TaughtStep,
} from '../../../src/tracker/learning/index.ts';
import { chance } from '../support/chance.ts';
import { certified, norris } from './norris.ts';

/** Every row counts alike and for ever: the plain conjugate regression. */
const plain: MinutesPrior = { ...usualPrior, kept: 1, oddity: 1e12, exact: null };

const step = (stepClass: string, scheduled: number, minutes: number): TaughtStep => ({
  stepClass,
  scheduled,
  minutes,
});

const foreseen = (
  learned: LearnedMinutes,
  stepClass: string,
  scheduled: number,
  prior = usualPrior,
) => {
  const quantile = foreseenMinutes(learned, stepClass, scheduled, prior);
  if (quantile === null) throw new Error('nothing foreseen');
  return { low: quantile(0.1), middle: quantile(0.5), high: quantile(0.9) };
};

describe('the regression', () => {
  it('finds the certified line of NIST StRD, Norris, where nothing is believed beforehand', () => {
    const unbelieving: MinutesPrior = {
      ...plain,
      origin: 0,
      levelWorth: 1e-9,
      slopeWorth: 1e-9,
      classWorth: 1e12,
    };
    // Thousandths, so that they can be logarithms of minutes.
    const steps = norris.map(([y, x]) => step('any', Math.exp(x / 1000), Math.exp(y / 1000)));
    const [level, slope] = teach(nothingLearned(unbelieving), steps, unbelieving).mean;
    expect((level ?? 0) * 1000).toBeCloseTo(certified.b0, 4);
    expect(slope).toBeCloseTo(certified.b1, 6);
  });

  it("is the conjugate update: a worked example in R 4.2.2, solve(L0 + X'X, L0 m0 + X'y)", () => {
    const took = [41, 50, 95, 22, 120, 28, 66];
    const scheduled = [30, 45, 60, 20, 90, 30, 45];
    const kinds = ['one', 'one', 'two', 'one', 'two', 'one', 'two'];
    const steps = took.map((minutes, i) => step(kinds[i] ?? '', scheduled[i] ?? 0, minutes));
    const { mean, covariance } = teach(nothingLearned(plain), steps, plain);
    const posterior = [4.11591076197648, 0.95750089533679, -0.0173406913551332, 0.133251453331608];
    for (const [i, value] of posterior.entries()) expect(mean[i]).toBeCloseTo(value, 9);
    const inSpreads = [
      [0.162511214597734, 0.0119731202133316, -0.0887666736367525, -0.0820554450988473],
      [0.0119731202133316, 0.0900659145731331, 0.0239763344320304, -0.0120032142186988],
      [-0.0887666736367525, 0.0239763344320304, 0.201785008841598, 0.0427816508549831],
      [-0.0820554450988473, -0.0120032142186988, 0.0427816508549831, 0.208496237379503],
    ];
    for (const [i, row] of inSpreads.entries())
      for (const [j, value] of row.entries()) expect(covariance[i]?.[j]).toBeCloseTo(value, 9);
  });

  it("begins with the ranges of Student's t, by hand after Gelman et al. (BDA3, 14.2), with qt(0.9, 4) of R", () => {
    // 4 at the origin; level and class of a third each on top of one spread of a half.
    const high = 4 + 0.5 * Math.sqrt(1 + 1 / 3 + 1 / 3) * 1.533206;
    const first = foreseen(nothingLearned(plain), 'wax', Math.exp(4), plain);
    expect(Math.log(first.high)).toBeCloseTo(high, 5);
    expect(Math.log(first.low)).toBeCloseTo(8 - high, 5);
  });

  it('remembers the spread over all classes four times as long as that of one', () => {
    const long = Array.from({ length: 3000 }, (_, i) => step('wax', 30, 25 + (i % 11)));
    const { squares, squaresOf } = teach(nothingLearned(), long);
    expect(squares.weight / (squaresOf[0]?.weight ?? 1)).toBeCloseTo(4, 1);
  });

  it('follows a class that runs long, and leaves the others nearly where they were', () => {
    const learned = teach(
      nothingLearned(),
      Array.from({ length: 8 }, (_, i) => [
        step('strip', 90, 90 * 1.6 * (i % 2 === 0 ? 1.1 : 1 / 1.1)),
        step('wax', 30, 30 * (i % 2 === 0 ? 1.1 : 1 / 1.1)),
      ]).flat(),
    );
    expect(foreseen(learned, 'strip', 90).middle / 90).toBeGreaterThan(1.4);
    expect(foreseen(learned, 'wax', 30).middle / 30).toBeLessThan(1.12);
  });

  it('starts a new class from the general lean', () => {
    const learned = teach(
      nothingLearned(),
      Array.from({ length: 12 }, (_, i) => step(i % 2 === 0 ? 'strip' : 'wax', 60, 90 + i)),
    );
    expect(foreseen(learned, 'stain', 60).middle).toBeGreaterThan(75);
    expect(
      foreseen(learned, 'stain', 60).high / foreseen(learned, 'stain', 60).low,
    ).toBeGreaterThan(foreseen(learned, 'wax', 60).high / foreseen(learned, 'wax', 60).low);
  });

  it('is not thrown by one step left running overnight', () => {
    const usual = Array.from({ length: 20 }, (_, i) => step('scuff', 15, 14 + (i % 3)));
    const before = teach(nothingLearned(), usual);
    const after = teach(before, [step('scuff', 15, 900)]);
    expect(foreseen(after, 'scuff', 15).middle / foreseen(before, 'scuff', 15).middle).toBeLessThan(
      1.12,
    );
  });

  it('learns the same from steps one by one as from all at once, and leaves what it was given', () => {
    const steps = norris.slice(0, 30).map(([, x], i) => step(`class ${i % 4}`, 20 + i, 5 + x / 9));
    const first = nothingLearned();
    const frozen = JSON.stringify(first);
    const byOne = steps.reduce((learned, each) => teach(learned, [each]), first);
    expect(byOne).toEqual(teach(first, steps));
    expect(JSON.stringify(first)).toBe(frozen);
    // A cache is JSON.
    expect(JSON.parse(JSON.stringify(byOne))).toEqual(byOne);
  });

  it('expects minutes that were written down as estimated to be so again, and keeps the ranges of timed ones', () => {
    const timed = Array.from({ length: 40 }, (_, i) =>
      step('stain', 40, 40 * Math.exp(Math.sin(i * 7) / 2)),
    );
    const mixed = timed.flatMap((each) => [each, step('stain', 40, 40)]);
    const [without, withExact] = [timed, mixed].map((steps) =>
      foreseen(teach(nothingLearned(), steps), 'stain', 40),
    );
    expect(withExact?.middle).toBe(40);
    expect((withExact?.high ?? 0) / (without?.high ?? 1)).toBeGreaterThan(0.8);
  });
});

const anyMinutes = fc.oneof(
  fc.double({ min: 0.1, max: 2000, noNaN: true }),
  fc.constantFrom(
    0,
    -0,
    -5,
    1e-300,
    1e300,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    NaN,
  ),
);
const anySteps = fc.array(
  fc.record({
    stepClass: fc.constantFrom('strip', 'wax', 'toString', '__proto__', ''),
    scheduled: anyMinutes,
    minutes: anyMinutes,
  }),
  { maxLength: 60 },
);

describe('after any history', () => {
  it('no range is without end or out of order', () => {
    fc.assert(
      fc.property(anySteps, fc.double({ min: 0.5, max: 3000, noNaN: true }), (steps, scheduled) => {
        const learned = teach(nothingLearned(), steps);
        const total = foreseenTotal(learned, [...steps, step('new', scheduled, 0)], steadily(), {
          draws: 20,
        });
        const ranges = [
          foreseen(learned, 'strip', scheduled),
          foreseen(learned, 'new', scheduled),
          { low: total(0.1), middle: total(0.5), high: total(0.9) },
        ];
        for (const { low, middle, high } of ranges) {
          expect(low).toBeGreaterThan(0);
          expect(middle).toBeGreaterThanOrEqual(low);
          expect(high).toBeGreaterThanOrEqual(middle);
          expect(high).toBeLessThan(Number.POSITIVE_INFINITY);
        }
      }),
    );
  });

  it('what was no minutes has taught nothing', () => {
    const none = [0, -5, NaN].flatMap((minutes) => [
      step('wax', 30, minutes),
      step('wax', minutes, 30),
    ]);
    expect(teach(nothingLearned(), none)).toEqual(nothingLearned());
  });
});

/** Steps through the unit interval by the golden ratio: even, and the same each time. */
function steadily(): () => number {
  let at = 0.5;
  return () => (at = (at + 0.6180339887498949) % 1);
}

describe('a total', () => {
  const history = Array.from({ length: 60 }, (_, i) =>
    step(['strip', 'stain', 'wax'][i % 3] ?? '', 45, 45 * Math.exp(Math.sin(i * 12.9898) * 0.5)),
  );
  const piece = Array.from({ length: 12 }, (_, i) => ({
    stepClass: ['strip', 'stain', 'wax'][i % 3] ?? '',
    scheduled: 45,
  }));

  it('is wider than steps that have nothing to do with each other, and narrower than all slow at once', () => {
    const learned = teach(nothingLearned(), history);
    const total = foreseenTotal(learned, piece, chance(1));
    const alone = foreseen(learned, 'strip', 45);
    const width = Math.log(total(0.9) / total(0.1));
    expect(width).toBeLessThan(Math.log(alone.high / alone.low) / 1.5);
    expect(width).toBeGreaterThan(Math.log(alone.high / alone.low) / Math.sqrt(12));
  });

  it("of one step is as wide as that step's own range", () => {
    const learned = teach(nothingLearned(), history);
    const total = foreseenTotal(learned, piece.slice(0, 1), chance(2), { draws: 20_000 });
    const alone = foreseen(learned, 'strip', 45);
    const width = Math.log(total(0.9) / total(0.1));
    expect(width / Math.log(alone.high / alone.low)).toBeCloseTo(1, 1);
    expect(Math.abs(width / Math.log(alone.high / alone.low) - 1)).toBeLessThan(0.035);
  });

  it('is the same for the same seed, and nothing for no steps', () => {
    const learned = teach(nothingLearned(), history);
    expect(foreseenTotal(learned, piece, chance(3))(0.9)).toBe(
      foreseenTotal(learned, piece, chance(3))(0.9),
    );
    expect(foreseenTotal(learned, [], chance(3))(0.5)).toBe(0);
  });

  it('holds four in five of what hands that lean as the model thinks come to', () => {
    const draw = chance(7);
    const normal = (): number => Array.from({ length: 12 }, draw).reduce((a, b) => a + b, -6);
    let held = 0;
    const rounds = 150;
    for (let round = 0; round < rounds; round++) {
      // Another prior than ours: no slope below 1, classes further apart, a spread of 0.35.
      const lean = { strip: normal() * 0.4, stain: normal() * 0.4, wax: normal() * 0.4 };
      const minutes = (stepClass: string, ofPiece: number): number =>
        45 * Math.exp(lean[stepClass as keyof typeof lean] + 0.12 * ofPiece + 0.33 * normal());
      const learned = teach(
        nothingLearned(),
        Array.from({ length: 3 }, normal).flatMap((ofPiece) =>
          piece.map(({ stepClass }) => step(stepClass, 45, minutes(stepClass, ofPiece))),
        ),
      );
      const ofPiece = normal();
      const took = piece.reduce((sum, { stepClass }) => sum + minutes(stepClass, ofPiece), 0);
      const total = foreseenTotal(learned, piece, draw, { draws: 300 });
      if (took >= total(0.1) && took <= total(0.9)) held += 1;
    }
    expect(held / rounds).toBeGreaterThan(0.72);
    expect(held / rounds).toBeLessThan(0.92);
  });
});
