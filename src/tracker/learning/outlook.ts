import { logMinutes, type LearnedMinutes } from './learned-minutes.ts';
import type { MinutesPrior } from './minutes-prior.ts';
import { dot, times, type Sparse } from './symmetric.ts';

/** What the regression says of the logarithm of a step's minutes, before it is done. */
export type Outlook = {
  /** Where the step's class stands among the classes; -1 where none was ever finished. */
  readonly place: number;
  readonly regressors: Sparse;
  /** Logarithm of the minutes that the schedule expects. */
  readonly scheduled: number;
  readonly centre: number;
  /** How uncertain the centre is, in squared spreads. */
  readonly leverage: number;
  /** Covariance of the coefficients with the centre, in squared spreads. */
  readonly gain: readonly number[];
  /** Squared spread of this class around its centre, and of all classes together. */
  readonly ownVariance: number;
  readonly commonVariance: number;
  /** Spread of the next step: of the class, and of the centre itself. */
  readonly spread: number;
  /** Of the Student t that the next step follows while there are few. */
  readonly degrees: number;
};

/** Null where the schedule's minutes are none. `also` are terms that this step has beside the usual ones. */
export function outlookOn(
  learned: LearnedMinutes,
  prior: MinutesPrior,
  stepClass: string,
  expectedMinutes: number,
  also: Sparse = [],
): Outlook | null {
  const scheduled = logMinutes(expectedMinutes);
  if (scheduled === null) return null;
  const place = learned.classes.indexOf(stepClass);
  const common = [
    { at: 0, value: 1 },
    { at: 1, value: scheduled - prior.origin },
  ];
  // A class that was never done adds its whole prior to what is uncertain, and nothing to what is expected.
  const regressors = place < 0 ? common : [...common, { at: 2 + place, value: 1 }, ...also];
  const gain = times(learned.covariance, regressors);
  const leverage = dot(gain, regressors) + (place < 0 ? 1 / prior.classWorth : 0);
  const { weight, sum } = learned.squares;
  const own = learned.squaresOf[place] ?? { weight: 0, sum: 0 };
  const commonVariance =
    (prior.spreadWorth * prior.spread ** 2 + sum) / (prior.spreadWorth + weight);
  const ownVariance =
    (prior.classSpreadWorth * commonVariance + own.sum) / (prior.classSpreadWorth + own.weight);
  const ofClass = prior.classSpreadWorth + own.weight;
  const degrees =
    weight < prior.classSpreadWorth ? Math.min(prior.spreadWorth + weight, ofClass) : ofClass;
  return {
    place,
    regressors,
    scheduled,
    centre: dot(learned.mean, regressors),
    leverage,
    gain,
    ownVariance,
    commonVariance,
    spread: Math.sqrt(ownVariance * (1 + leverage)),
    // To a tenth: more is not known of them.
    degrees: Math.round(degrees * 10) / 10,
  };
}
