import { normalShare, normalShareBetween } from './normal-share.ts';

/**
 * One coat that was tried: when it was last not yet there and when it was found ready, in minutes from the last stroke.
 * `readyAt` null: it was given up, or worked on, before it was found ready. `notYetAt` 0: it was ready at the first try.
 */
export type TriedCoat = {
  readonly notYetAt: number;
  readonly readyAt: number | null;
  /** What the label's figure came to under the conditions of that coat, in minutes. */
  readonly expected: number;
};

/**
 * Times follow a log-normal: their logarithm lies around log expected plus an offset, which belongs to this product in
 * this shop, with a spread from coat to coat.
 */
export type DryingPrior = {
  /** Of the offset: 0 is as the label says. */
  readonly offset: { readonly mean: number; readonly deviation: number };
  /** Of the spread's logarithm. */
  readonly logSpread: { readonly mean: number; readonly deviation: number };
  /** So many coats in a hundred have nothing to do with the others: a thick one, an old can, a check told late. */
  readonly oddShare: number;
};

/**
 * Of the spread little is said: products lie anywhere between 0.15 and 0.9 (two of three), so that a few coats tell which.
 * Common practice, no source; chosen on half of the invented shops that `npm run measure drying` has, and tried on the rest.
 */
export const usualDryingPrior: DryingPrior = {
  offset: { mean: 0, deviation: 0.4 },
  logSpread: { mean: Math.log(0.36), deviation: 0.9 },
  oddShare: 0.02,
};

/** How far odd coats lie about, in logarithms: half of them are out by more than twice. */
const oddSpread = 1.1;

export type DryingPoint = {
  readonly offset: number;
  readonly spread: number;
  /** All weights add up to 1. */
  readonly weight: number;
};

export type LearnedDrying = {
  readonly points: readonly DryingPoint[];
  /** Coats that taught something. */
  readonly coats: number;
  /** Of these, coats that were found ready. */
  readonly found: number;
};

/** Deviations of the prior that the grid covers in either direction, and its points. */
const reach = { offset: 4, logSpread: 2.5 };
const steps = { offset: 64, logSpread: 20 };

/** A coat that can teach: its ends are in order and something is known. */
const teaches = ({ notYetAt, readyAt, expected }: TriedCoat): boolean =>
  Number.isFinite(expected) &&
  expected > 0 &&
  notYetAt >= 0 &&
  Number.isFinite(notYetAt) &&
  (readyAt === null ? notYetAt > 0 : Number.isFinite(readyAt) && readyAt > notYetAt);

/**
 * What coats that were tried teach of a product's time to a milestone. A posterior on a fixed grid, so the same coats
 * always give the same answer. Each coat counts as what is known of it: a time between two checks, or later than one.
 * Coats whose checks contradict each other, and troubled ones (which the caller leaves out), teach nothing.
 */
export function learnDrying(
  coats: readonly TriedCoat[],
  prior: DryingPrior = usualDryingPrior,
): LearnedDrying {
  const counted = coats.filter(teaches);
  const brackets = counted.map(bracketOf);
  const points: { offset: number; spread: number; log: number }[] = [];
  for (const [offset, offsetLog] of along(prior.offset, reach.offset, steps.offset))
    for (const [logSpread, spreadLog] of along(prior.logSpread, reach.logSpread, steps.logSpread)) {
      const spread = Math.exp(logSpread);
      const log = offsetLog + spreadLog + logLikelihood(brackets, offset, spread, prior.oddShare);
      points.push({ offset, spread, log });
    }
  const highest = Math.max(...points.map(({ log }) => log));
  const weights = points.map(({ log }) => Math.exp(log - highest));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const own = points.map(({ offset, spread }, i) => ({
    offset,
    spread,
    weight: ((1 - prior.oddShare) * (weights[i] ?? 0)) / all,
  }));
  return {
    // The next coat may be an odd one, as any that was tried.
    points: [...own, { offset: 0, spread: oddSpread, weight: prior.oddShare }],
    coats: counted.length,
    found: counted.filter(({ readyAt }) => readyAt !== null).length,
  };
}

/** Places along one axis, each with the logarithm of the prior there. */
function* along(
  { mean, deviation }: { readonly mean: number; readonly deviation: number },
  deviations: number,
  count: number,
): Generator<readonly [place: number, log: number]> {
  for (let i = 0; i <= count; i++) {
    const z = deviations * ((2 * i) / count - 1);
    yield [mean + z * deviation, (-z * z) / 2];
  }
}

/** What is known of a coat, in logarithms from what was expected of it. */
type Bracket = {
  readonly from: number;
  readonly to: number;
  /** Its chance as an odd one, which no offset or spread changes. */
  readonly odd: number;
};

function bracketOf({ notYetAt, readyAt, expected }: TriedCoat): Bracket {
  const from = notYetAt === 0 ? Number.NEGATIVE_INFINITY : Math.log(notYetAt / expected);
  const to = readyAt === null ? Number.POSITIVE_INFINITY : Math.log(readyAt / expected);
  return { from, to, odd: normalShareBetween(from / oddSpread, to / oddSpread) };
}

/** The logarithm of the chance of what was found, given offset and spread; of coats that can teach. */
export const dryingLogLikelihood = (
  coats: readonly TriedCoat[],
  offset: number,
  spread: number,
): number => logLikelihood(coats.map(bracketOf), offset, spread, 0);

/** A loop, as this runs a thousand times for one answer. */
function logLikelihood(
  brackets: readonly Bracket[],
  offset: number,
  spread: number,
  oddShare: number,
): number {
  let sum = 0;
  for (const { from, to, odd } of brackets) {
    const own = normalShareBetween((from - offset) / spread, (to - offset) / spread);
    sum += Math.log(Math.max(Number.MIN_VALUE, (1 - oddShare) * own + oddShare * odd));
  }
  return sum;
}

/** So near to the chance that was asked for is near enough, and so many tries are enough for it. */
const nearEnough = 1e-10;
const mostTries = 60;
/** No time to a milestone lies beyond, in logarithms. */
const farthest = 12;

/** The minutes by which the next coat is there with chance `p` (0..1), where the label's figure comes to `expected`. */
export function foreseenDrying({ points }: LearnedDrying, expected: number, p: number): number {
  // Points that weigh nothing cost time and change nothing.
  const weighing = points.filter(({ weight }) => weight > 1e-9);
  const missing = (log: number): number => {
    let sum = -p;
    for (const { offset, spread, weight } of weighing)
      sum += weight * normalShare((log - offset) / spread);
    return sum;
  };
  // False position; an end that stays twice counts half (the Illinois rule). A fifth of the tries of halving alone.
  let [low, high] = [-farthest, farthest];
  let [missingLow, missingHigh] = [missing(low), missing(high)];
  let middle = 0;
  let lastMoved: 'low' | 'high' | null = null;
  for (let tried = 0; tried < mostTries; tried++) {
    middle = (low * missingHigh - high * missingLow) / (missingHigh - missingLow);
    const here = missing(middle);
    if (Math.abs(here) < nearEnough) break;
    if (here < 0) {
      [low, missingLow] = [middle, here];
      if (lastMoved === 'low') missingHigh /= 2;
      lastMoved = 'low';
    } else {
      [high, missingHigh] = [middle, here];
      if (lastMoved === 'high') missingLow /= 2;
      lastMoved = 'high';
    }
  }
  return expected * Math.exp(middle);
}
