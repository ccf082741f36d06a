import type { Piece, Sized } from '../bench/piece.ts';
import {
  branchesOf,
  nothingCounted,
  nothingKnown,
  type Branch,
  type Counts,
  type KnownOfPiece,
  type Step,
} from '../trade/index.ts';
import { expectedMinutes } from './expected.ts';
import { rangeOfSum } from './range-of-sum.ts';

/** How much work a finishing schedule is for one piece, over every branch that the piece can still go through. */
export type ScheduleFigures = {
  readonly leastSteps: number;
  readonly mostSteps: number;
  /** Hands-on minutes on the reference piece, without setup: the low end of the quickest branch, the high end of the longest. */
  readonly lowMinutes: number;
  readonly highMinutes: number;
};

/**
 * Counts only steps that can be in together. What is known of the piece rules branches out; all else is tried. No steps
 * take no minutes.
 */
export function scheduleFigures(
  { steps }: { readonly steps: readonly Step[] },
  told: KnownOfPiece = nothingKnown,
): ScheduleFigures {
  const branches = branchesOf(steps, told);
  const counts = branches.map((branch) => branch.steps.length);
  const sums = branches.map((branch) => branchMinutes(branch, referencePiece));
  return {
    leastSteps: Math.min(...counts),
    mostSteps: Math.max(...counts),
    lowMinutes: Math.min(...sums.map(({ low }) => low)),
    highMinutes: Math.max(...sums.map(({ high }) => high)),
  };
}

/** What minutes depend on of the piece itself, whatever way it goes. */
export type Bulk = Pick<Piece, 'areaM2' | 'profile'> & Counts;

/** What a schedule's typical minutes are stated for. */
export const referencePiece: Bulk = { areaM2: null, profile: null, ...nothingCounted };

/** What minutes depend on in a branch, on a piece of that size and shape. */
export const sizedIn = (
  { answers }: Pick<KnownOfPiece, 'answers'>,
  { areaM2, profile, fittings, joints, drawers }: Bulk,
): Sized => ({
  areaM2,
  profile,
  fittings,
  joints,
  drawers,
  answers: Object.fromEntries(Object.entries(answers).map(([step, answer]) => [step, { answer }])),
});

/** Hands-on minutes of one branch by the finishing schedule, without setup. */
export function branchMinutes(
  { steps, known }: Branch,
  bulk: Bulk,
): { readonly low: number; readonly high: number } {
  const piece = sizedIn(known, bulk);
  const sum = rangeOfSum(steps.map((step) => expectedMinutes(step, piece)));
  return { low: sum?.low ?? 0, high: sum?.high ?? 0 };
}
