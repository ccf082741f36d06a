import type { Symmetric } from './symmetric.ts';

/** A finished step: what the finishing schedule expects of it at this size, and what it took, in minutes. */
export type TaughtStep = {
  readonly stepClass: string;
  readonly scheduled: number;
  readonly minutes: number;
};

/** A sum that forgets: `weight` counts, `sum` adds up. */
export type Fading = { readonly weight: number; readonly sum: number };

/**
 * What finished steps have taught of one person's minutes. Plain values: it can be written to a file. The coefficients are
 * the level, the slope on log scheduled minutes, and one term a class, in the order of `classes`.
 */
export type LearnedMinutes = {
  /** How many steps have taught. */
  readonly steps: number;
  readonly classes: readonly string[];
  readonly mean: readonly number[];
  /** Covariance of the coefficients, in units of the squared spread. */
  readonly covariance: Symmetric;
  /** Squared residuals of all steps, and of each class. */
  readonly squares: Fading;
  readonly squaresOf: readonly Fading[];
  /** Minutes that were exactly as expected, of all. */
  readonly exact: Fading;
  /** The last residuals, in spreads; the oldest first. */
  readonly residuals: readonly number[];
};

/** From so many steps on, ranges come from the person's own residuals. */
export const ownRangesFrom = 10;

/** No more residuals than that are kept. */
export const residualsKept = 300;

/**
 * No step is longer or shorter than that, in minutes: beyond it, it isn't minutes of work that were recorded. Nought and
 * less teach nothing at all.
 */
const shortest = 0.01;
const longest = 100_000;

/** The logarithm of minutes; null for what is none. */
export function logMinutes(minutes: number): number | null {
  if (Number.isNaN(minutes) || minutes <= 0) return null;
  return Math.log(Math.min(longest, Math.max(shortest, minutes)));
}
