import type { Expectation } from '../bench/facts.ts';
import type { Sized } from '../bench/piece.ts';
import type { Bench } from '../bench/bench.ts';
import type { Step } from '../trade/schedule.ts';
import { expectedMinutes } from './expected.ts';
import { normalQuantile } from './normal-quantile.ts';

/** The widest spread of log minutes that is believed: a range of 1 to 2000. */
const widest = 3;

/** Sums of less than this, in minutes, are nothing; their squares would be too small to divide by. */
const nothing = 1e-9;

/** Log-normal minutes: their median, and the standard deviation of their logarithm. */
type LogNormal = { readonly median: number; readonly spread: number };

/** A range that is none (nothing below it, or its ends reversed) counts as a fixed number of minutes. */
function logNormalOf({ minutes, low, high, chance }: Expectation): LogNormal {
  const reach = normalQuantile((1 + chance) / 2);
  const isRange = low > 0 && high > low && reach > 0;
  const spread = isRange ? Math.min(widest, Math.log(high / low) / (2 * reach)) : 0;
  return { median: Math.max(0, minutes), spread };
}

/**
 * What several steps take together, with a range of the same chance as the first one's.
 *
 * Each step counts as log-normal: its estimate is the median, the width of its range gives the spread. Means and
 * variances are added, as for steps that are slow or fast independently of each other, and the sum is read as log-normal
 * with that mean and variance (Fenton, The sum of log-normal probability distributions in scatter transmission systems,
 * IRE Transactions on Communications Systems 8 (1960) 57-67). Adding up the ends of the ranges instead would claim that
 * all steps are slow at once. The estimate is the median of the sum, which lies a little above the sum of the medians.
 * Null for no steps.
 */
export function rangeOfSum(steps: readonly Expectation[]): Expectation | null {
  const [first] = steps;
  if (first === undefined) return null;
  if (steps.length === 1) return first;
  let mean = 0;
  let variance = 0;
  for (const { median, spread } of steps.map(logNormalOf)) {
    const square = Math.exp(spread * spread);
    mean += median * Math.sqrt(square);
    variance += median * median * square * (square - 1);
  }
  const { chance } = first;
  const model = steps.every((step) => step.model === first.model) ? first.model : 'several';
  if (!(mean > nothing)) return { minutes: 0, low: 0, high: 0, chance, model };
  const logVariance = Math.log1p(variance / (mean * mean));
  const minutes = mean / Math.exp(logVariance / 2);
  const reach = Math.exp(normalQuantile((1 + chance) / 2) * Math.sqrt(logVariance));
  return { minutes, low: minutes / reach, high: minutes * reach, chance, model };
}

/** What several steps of a piece that are still to come take together; null for none. */
export const totalOn = (
  { estimator }: Pick<Bench, 'estimator'>,
  steps: readonly Step[],
  piece: Sized,
): Expectation | null =>
  estimator?.total(steps, piece) ?? rangeOfSum(steps.map((step) => expectedMinutes(step, piece)));
