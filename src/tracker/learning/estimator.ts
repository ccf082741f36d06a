import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Estimator } from '../bench/bench.ts';
import type { Sized } from '../bench/piece.ts';
import type { Expectation } from '../bench/facts.ts';
import { expectedMinutes } from '../estimate/expected.ts';
import type { Step } from '../trade/schedule.ts';
import type { LearnedMinutes } from './learned-minutes.ts';
import { foreseenMinutes } from './minutes-range.ts';
import { foreseenTotal } from './minutes-total.ts';

/** The model of expectations that were learned. */
export const fromYou = 'learned minutes';

/** The chance that every range claims. */
const chance = 0.8;

/** Any number would do; the same one gives the same range for the same steps, on every screen and after every restart. */
const seed = 1947;

/** Drawing takes longer than a frame may: the same steps are drawn once. */
const totalsBy = new WeakMap<LearnedMinutes, Map<string, Expectation>>();

/** Foretells by what was learned; before the first finished step by the finishing schedule. */
export function estimatorFrom(learned: () => LearnedMinutes): Estimator {
  return {
    expects: (step, piece) => expects(learned(), step, piece),
    knows: (stepClass) => {
      const { classes, squaresOf } = learned();
      return squaresOf[classes.indexOf(stepClass)]?.weight ?? 0;
    },
    total: (steps, piece) => {
      const now = learned();
      if (now.steps === 0 || steps.length === 0) return null;
      const coming = steps.map((step) => ({
        stepClass: step.stepClass,
        scheduled: expectedMinutes(step, piece).minutes,
      }));
      const key = JSON.stringify(coming);
      const totals = totalsBy.get(now) ?? new Map<string, Expectation>();
      totalsBy.set(now, totals);
      const total = totals.get(key) ?? rangeOf(foreseenTotal(now, coming, seeded()));
      totals.set(key, total);
      return total;
    },
  };
}

function expects(learned: LearnedMinutes, step: Step, piece: Sized): Expectation {
  const scheduled = expectedMinutes(step, piece);
  if (learned.steps === 0) return scheduled;
  const quantile = foreseenMinutes(learned, step.stepClass, scheduled.minutes);
  return quantile === null ? scheduled : rangeOf(quantile);
}

/** The middle and the range that every expectation tells. */
export const rangeOf = (quantile: (p: number) => number): Expectation => ({
  minutes: quantile(0.5),
  low: quantile((1 - chance) / 2),
  high: quantile((1 + chance) / 2),
  chance,
  model: fromYou,
});

function seeded(): () => number {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}
