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

export const usualDryingPrior: DryingPrior = {
  offset: { mean: 0, deviation: 0.4 },
  logSpread: { mean: Math.log(0.36), deviation: 0.45 },
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
const reach = { offset: 4, logSpread: 3 };
const steps = { offset: 64, logSpread: 18 };

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
  const points: { offset: number; spread: number; log: number }[] = [];
  for (const [offset, offsetLog] of along(prior.offset, reach.offset, steps.offset))
    for (const [logSpread, spreadLog] of along(prior.logSpread, reach.logSpread, steps.logSpread)) {
      const spread = Math.exp(logSpread);
      const log =
        offsetLog + spreadLog + dryingLogLikelihood(counted, offset, spread, prior.oddShare);
      points.push({ offset, spread, log });
    }
  const highest = Math.max(...points.map(({ log }) => log));
  const weights = points.map(({ log }) => Math.exp(log - highest));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  return {
    points: points.map(({ offset, spread }, i) => ({
      offset,
      spread,
      weight: (weights[i] ?? 0) / all,
    })),
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

/** The logarithm of the chance of what was found, given offset and spread; of coats that can teach. */
export function dryingLogLikelihood(
  coats: readonly TriedCoat[],
  offset: number,
  spread: number,
  oddShare = 0,
): number {
  return coats.reduce((sum, coat) => {
    const own = chanceOf(coat, offset, spread);
    const odd = oddShare === 0 ? 0 : chanceOf(coat, 0, oddSpread);
    return sum + Math.log(Math.max(Number.MIN_VALUE, (1 - oddShare) * own + oddShare * odd));
  }, 0);
}

function chanceOf({ notYetAt, readyAt, expected }: TriedCoat, offset: number, spread: number) {
  const place = (minutes: number): number => (Math.log(minutes / expected) - offset) / spread;
  const low = notYetAt === 0 ? Number.NEGATIVE_INFINITY : place(notYetAt);
  return readyAt === null ? normalShare(-low) : normalShareBetween(low, place(readyAt));
}

/** How often a range is halved to find a quantile: to a thousandth of it, and again. */
const halvings = 40;

/** The minutes by which the next coat is there with chance `p` (0..1), where the label's figure comes to `expected`. */
export function foreseenDrying({ points }: LearnedDrying, expected: number, p: number): number {
  // Points that weigh nothing cost time and change nothing.
  const weighing = points.filter(({ weight }) => weight > 1e-9);
  const below = (log: number): number =>
    weighing.reduce(
      (sum, { offset, spread, weight }) => sum + weight * normalShare((log - offset) / spread),
      0,
    );
  let [low, high] = [-6, 6];
  for (let halving = 0; halving < halvings; halving++) {
    const middle = (low + high) / 2;
    if (below(middle) < p) low = middle;
    else high = middle;
  }
  return expected * Math.exp((low + high) / 2);
}
