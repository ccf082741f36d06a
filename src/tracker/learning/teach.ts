import { guessTerms, guessWorth, withoutGuessTerms } from './guess-terms.ts';
import {
  logMinutes,
  residualsKept,
  type Fading,
  type LearnedMinutes,
  type TaughtStep,
} from './learned-minutes.ts';
import { usualPrior, type MinutesPrior } from './minutes-prior.ts';
import { outlookOn, type Outlook } from './outlook.ts';
import { stretch, takeOff, type SymmetricInMaking } from './symmetric.ts';

/** Before the first finished step. */
export const nothingLearned = (prior: MinutesPrior = usualPrior): LearnedMinutes => ({
  steps: 0,
  classes: [],
  mean: [prior.origin, prior.slope],
  covariance: [
    [1 / prior.levelWorth, 0],
    [0, 1 / prior.slopeWorth],
  ],
  squares: { weight: 0, sum: 0 },
  squaresOf: [],
  exact: { weight: 0, sum: 0 },
  residuals: [],
});

/** A residual beyond so many spreads is cut there; and a squared one, for the spread, beyond three. */
const widestResidual = 10;
const widestForSpread = 3;

/** Logarithms that are nearer than that are the same minutes. */
const sameLog = 1e-6;

/**
 * What the steps add to what was learned before, in the order in which they were finished. Steps without minutes teach
 * nothing. `learned` stays as it was.
 *
 * A conjugate regression in closed form: a normal prior on the coefficients and scaled-chi-square beliefs about the
 * spreads, each row worked in by itself (Gelman et al., Bayesian Data Analysis, 3rd ed., ch. 14); weights of Student's t
 * against odd rows (Lange, Little and Taylor, Robust statistical modeling using the t distribution, JASA 84 (1989)
 * 881-896); forgetting that never goes back behind the prior.
 */
export function teach(
  learned: LearnedMinutes,
  steps: Iterable<TaughtStep>,
  prior: MinutesPrior = usualPrior,
): LearnedMinutes {
  const making = inMaking(learned);
  for (const step of steps) teachOne(making, step, prior);
  return { ...making, residuals: making.residuals.slice(-residualsKept) };
}

/**
 * The same for steps whose `scheduled` minutes are this person's own guesses. Nobody knows how those compare with the
 * schedules' figures, so terms of their own take up what may be the guessing: nearly all of what is common to all of
 * them, half of what is peculiar to a class. How far they scatter says nothing of the schedules.
 */
export function teachGuesses(
  learned: LearnedMinutes,
  steps: Iterable<TaughtStep>,
  prior: MinutesPrior = usualPrior,
): LearnedMinutes {
  const making = inMaking(learned);
  for (const { stepClass, scheduled, minutes } of steps) {
    const took = logMinutes(minutes);
    if (took === null || logMinutes(scheduled) === null) continue;
    for (const name of [stepClass, ...guessTerms(stepClass)])
      if (!making.classes.includes(name)) addClass(making, name, prior);
    const also = guessTerms(stepClass).map((name) => ({
      at: 2 + making.classes.indexOf(name),
      value: 1,
    }));
    const outlook = outlookOn(making, prior, stepClass, scheduled, also);
    if (outlook === null) continue;
    teachCoefficients(making, outlook, took - outlook.centre, 1, prior);
    making.steps += 1;
  }
  return withoutGuessTerms(making);
}

const inMaking = (learned: LearnedMinutes): InMaking => ({
  ...learned,
  classes: [...learned.classes],
  mean: [...learned.mean],
  covariance: learned.covariance.map((row) => [...row]),
  squaresOf: [...learned.squaresOf],
  residuals: [...learned.residuals],
});

type InMaking = {
  steps: number;
  classes: string[];
  mean: number[];
  covariance: SymmetricInMaking;
  squares: Fading;
  squaresOf: Fading[];
  exact: Fading;
  residuals: number[];
};

function teachOne(making: InMaking, step: TaughtStep, prior: MinutesPrior): void {
  const took = logMinutes(step.minutes);
  if (took === null || logMinutes(step.scheduled) === null) return;
  if (!making.classes.includes(step.stepClass)) addClass(making, step.stepClass, prior);
  const outlook = outlookOn(making, prior, step.stepClass, step.scheduled);
  if (outlook === null) return;
  const isExact = prior.exact !== null && Math.abs(took - outlook.scheduled) < sameLog;
  const off = took - outlook.centre;
  teachCoefficients(making, outlook, off, isExact ? (prior.exact?.worth ?? 1) : 1, prior);
  making.exact = faded(making.exact, prior.kept, isExact ? 1 : 0);
  making.steps += 1;
  if (!isExact) teachSpread(making, outlook, off, prior);
}

function addClass(making: InMaking, stepClass: string, prior: MinutesPrior): void {
  making.classes.push(stepClass);
  making.mean.push(0);
  making.squaresOf.push({ weight: 0, sum: 0 });
  for (const row of making.covariance) row.push(0);
  const worth = worthOf(making, making.mean.length - 1, prior);
  making.covariance.push([...making.mean.slice(1).map(() => 0), 1 / worth]);
}

function teachCoefficients(
  making: InMaking,
  { gain, leverage, spread }: Outlook,
  off: number,
  worth: number,
  prior: MinutesPrior,
): void {
  const weight = (worth * (prior.oddity + 1)) / (prior.oddity + (off / spread) ** 2);
  const by = 1 / weight + leverage;
  for (const [i, each] of gain.entries())
    making.mean[i] = (making.mean[i] ?? 0) + (each * off) / by;
  takeOff(making.covariance, gain, by);
  const factors = making.covariance.map((row, i) => {
    const widest = 1 / worthOf(making, i, prior);
    return Math.max(1, Math.sqrt(Math.min(1 / prior.kept, widest / (row[i] ?? widest))));
  });
  stretch(making.covariance, factors);
}

function worthOf({ classes }: InMaking, place: number, prior: MinutesPrior): number {
  if (place < 2) return place === 0 ? prior.levelWorth : prior.slopeWorth;
  return guessWorth(classes[place - 2] ?? '', prior.classWorth);
}

function teachSpread(
  making: InMaking,
  { place, leverage, spread }: Outlook,
  off: number,
  prior: MinutesPrior,
): void {
  const square = Math.min(off ** 2 / (1 + leverage), (widestForSpread * spread) ** 2);
  const own = making.squaresOf[place] ?? { weight: 0, sum: 0 };
  making.squaresOf[place] = faded(own, prior.kept, square);
  making.squares = faded(making.squares, prior.kept ** 0.25, square);
  making.residuals.push(Math.min(widestResidual, Math.max(-widestResidual, off / spread)));
  // Cut now and then, not each time: moving hundreds of numbers costs more than the regression.
  if (making.residuals.length > 2 * residualsKept)
    making.residuals = making.residuals.slice(-residualsKept);
}

const faded = ({ weight, sum }: Fading, kept: number, value: number): Fading => ({
  weight: kept * weight + 1,
  sum: kept * sum + value,
});
