import type { LearnedMinutes } from './learned-minutes.ts';
import { cutOut } from './symmetric.ts';

/**
 * Terms of the regression that only rows with this person's own guesses have: how far the guesses are off the finishing
 * schedules' figures, over all and in a class. They stand among the classes, under names that no class has, for as long
 * as guesses teach.
 */
const guessed = 'guessed';
/** The terms by which a guess of a class differs from a schedule: one for all guesses, one for the class. */
export const guessTerms = (stepClass: string): readonly string[] => [
  guessed,
  `${guessed} ${stepClass}`,
];

const isGuessTerm = (name: string): boolean => name === guessed || name.startsWith(`${guessed} `);

/** How many steps the belief is worth that guesses and schedules agree: over all hardly anything, in a class as a class. */
export const guessWorth = (name: string, classWorth: number): number =>
  name === guessed ? 0.1 : classWorth;

/** What is known of all other terms: of a normal distribution the rest is left out. */
export function withoutGuessTerms(learned: LearnedMinutes): LearnedMinutes {
  const kept = learned.classes.flatMap((name, at) => (isGuessTerm(name) ? [] : [at]));
  const places = [0, 1, ...kept.map((at) => 2 + at)];
  const nothing = { weight: 0, sum: 0 };
  return {
    ...learned,
    classes: kept.map((at) => learned.classes[at] ?? ''),
    mean: places.map((place) => learned.mean[place] ?? 0),
    covariance: cutOut(learned.covariance, places),
    squaresOf: kept.map((at) => learned.squaresOf[at] ?? nothing),
  };
}
