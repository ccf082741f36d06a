import { sortedQuantile } from '../estimate/sample-quantile.ts';
import { ownRangesFrom, type LearnedMinutes } from './learned-minutes.ts';
import { usualPrior, type MinutesPrior } from './minutes-prior.ts';
import { outlookOn, type Outlook } from './outlook.ts';
import { studentQuantile } from './student-quantile.ts';

/** So many residuals are taken for granted, spread as Student's t of six degrees of freedom has them. */
const borrowed = 40;
const borrowedDegrees = 6;
let borrowedResiduals: readonly number[] | undefined;
const residualsToBorrow = (): readonly number[] =>
  (borrowedResiduals ??= Array.from({ length: borrowed }, (_, i) =>
    studentQuantile((i + 0.5) / borrowed, borrowedDegrees),
  ));

const poolOf = new WeakMap<readonly number[], readonly number[]>();

/** The residuals that ranges and draws are taken from, in spreads, the lowest first. */
export function residualPool({ residuals }: LearnedMinutes): readonly number[] {
  const known = poolOf.get(residuals);
  if (known !== undefined) return known;
  const pool = [...residualsToBorrow(), ...residuals].sort((a, b) => a - b);
  poolOf.set(residuals, pool);
  return pool;
}

/** Whether this person's own residuals say how wide ranges are. */
export const hasOwnRanges = ({ steps }: LearnedMinutes): boolean => steps >= ownRangesFrom;

/**
 * The minutes that a step stays below with chance `p` (0..1), after what was learned. `expectedMinutes` are those of the
 * finishing schedule at the piece's size. Null where they are none.
 */
export function foreseenMinutes(
  learned: LearnedMinutes,
  stepClass: string,
  expectedMinutes: number,
  prior: MinutesPrior = usualPrior,
): ((p: number) => number) | null {
  const outlook = outlookOn(learned, prior, stepClass, expectedMinutes);
  if (outlook === null) return null;
  const share = exactShare(learned, prior);
  const timed = hasOwnRanges(learned)
    ? fromOwn(residualPool(learned), outlook)
    : fromStudent(outlook);
  return (p) => Math.exp(share > 0 ? withExact(p, share, outlook.scheduled, timed) : timed.at(p));
}

/** The chance that a step's minutes come out exactly as expected. */
export const exactShare = ({ exact }: LearnedMinutes, prior: MinutesPrior): number =>
  prior.exact === null ? 0 : (prior.exact.hits + exact.sum) / (prior.exact.of + exact.weight);

/** A distribution of log minutes: the value at a share, and the share below a value. */
type Spread = {
  readonly at: (p: number) => number;
  readonly below: (value: number) => number;
};

const fromOwn = (pool: readonly number[], { centre, spread }: Outlook): Spread => ({
  at: (p) => centre + spread * (sortedQuantile(pool, p) ?? 0),
  below: (value) => pool.filter((each) => each < (value - centre) / spread).length / pool.length,
});

function fromStudent({ centre, spread, degrees }: Outlook): Spread {
  const at = (p: number): number => centre + spread * studentQuantile(p, degrees);
  return { at, below: (value) => shareBelow(at, value) };
}

/** Halving finds the share to a thousandth: less than a minute on any step. */
function shareBelow(at: (p: number) => number, value: number): number {
  let [low, high] = [0.001, 0.999];
  for (let halving = 0; halving < 10; halving++) {
    const middle = (low + high) / 2;
    if (at(middle) < value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Timed minutes, mixed with a share of which all are exactly as scheduled. */
function withExact(p: number, share: number, scheduled: number, timed: Spread): number {
  const timedShare = 1 - share;
  const before = timedShare * timed.below(scheduled);
  if (p > before && p <= before + share) return scheduled;
  return timed.at(Math.min(1, (p <= before ? p : p - share) / timedShare));
}
