import type { Bench, Piece } from '../../tracker/bench/index.ts';
import { expectedMinutes, type StepHours } from '../../tracker/estimate/index.ts';
import type { Review } from '../../tracker/review/index.ts';
import { fromYou } from '../../tracker/learning/index.ts';
import { countedBy, countWords, profileFactor, profileWords } from '../../tracker/trade/index.ts';
import { rangeInWords, times } from '../format/index.ts';
import type { Shop } from '../port.ts';
import type { PieceRow } from './piece-rows.ts';

const squareFeet = 10.7639;

/**
 * Why a row expects what it does, a sentence each, the weightiest first: `Why 63 for strip: the finishing schedule's 90, at 1.2 m2.`
 * `Your strip ran 1.4 times the estimate, 6 pieces.`
 */
export function aboutRow(
  row: PieceRow,
  { bench, piece }: Whose,
  finished: Pick<Review, 'classes'>,
  { lengths }: Pick<Shop, 'lengths'>,
  isNarrow: boolean,
  isReading = false,
): readonly string[] {
  const { low, high, minutes } = row.expected;
  const counted = row.steps.filter(({ verdict }) => verdict !== null);
  const told = counted.length > 0 ? counted : row.steps;
  return [
    ...(isNarrow ? [`Expected ${rangeInWords(low, high)}.`] : []),
    `Why ${Math.round(minutes)}${isNarrow ? '' : ` for ${row.name}`}: ${basisOf(told, { bench, piece }, lengths, finished)}.`,
    // What was learned says it already.
    ...(told.some(isLearned) ? [] : [leanWords(row, finished, isReading)]),
    ...(counted.length > 0 && counted.length < row.steps.length
      ? [`${counted.length} of ${row.steps.length} done and timed.`]
      : []),
    ...(row.steps.some(({ about }) => about) ? ["Setup taken off by the schedule's share."] : []),
  ];
}

/** The piece, and the hands that work on it. */
type Whose = { readonly bench: Pick<Bench, 'estimator'>; readonly piece: Piece };

const isLearned = ({ expected }: StepHours): boolean => expected.model === fromYou;

/**
 * `schedule says 90, your strip runs 1.4 times, 6 pieces`; of a class that was never done and timed
 * `schedule says 90, you run 1.2 times over all, no strip yet`.
 */
function learnedBasis(
  steps: readonly StepHours[],
  first: StepHours,
  { bench, piece }: Whose,
  finished: Pick<Review, 'classes'>,
): string {
  const scheduled = steps.reduce((sum, { step }) => sum + expectedMinutes(step, piece).minutes, 0);
  const expected = steps.reduce((sum, each) => sum + each.expected.minutes, 0);
  const { stepClass } = first.step;
  const pieces = finished.classes.find((each) => each.stepClass === stepClass)?.pieces ?? 0;
  const says = `schedule says ${Math.round(scheduled)}`;
  const runs = times(expected / scheduled);
  if (pieces === 0 && bench.estimator?.knows(stepClass) === 0)
    return `${says}, you run ${runs} over all, no ${stepClass} yet`;
  const counted = pieces === 0 ? '' : `, ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`;
  return `${says}, your ${stepClass} runs ${runs}${counted}`;
}

function basisOf(
  steps: readonly StepHours[],
  { bench, piece }: Whose,
  lengths: Shop['lengths'],
  finished: Pick<Review, 'classes'>,
): string {
  const [first] = steps;
  if (first === undefined) return 'nothing is known';
  if (steps.every(isLearned)) return learnedBasis(steps, first, { bench, piece }, finished);
  const models = new Set(steps.map(({ expected }) => expected.model));
  if (models.size > 1 || !models.has('finishing schedule')) return [...models].join(', ');
  const typical = steps.reduce((sum, { step }) => sum + step.minutes.typical, 0);
  const sized = steps.some(
    ({ step, expected }) => Math.abs(expected.minutes - step.minutes.typical) > 0.5,
  );
  const several = steps.length > 1 ? ` for ${steps.length} steps` : '';
  const { areaM2, profile } = piece;
  const size =
    areaM2 === null
      ? []
      : [lengths === 'mm' ? `${areaM2.toFixed(1)} m2` : `${Math.round(areaM2 * squareFeet)} sq ft`];
  const shaped = steps.some(({ step }) => profileFactor(step, profile) !== 1);
  const byCount = [...new Set(steps.flatMap(({ step }) => countedBy(step) ?? []))].flatMap(
    (what) => {
      const count = piece[what];
      return count === null ? [] : [countWords(what, count)];
    },
  );
  const byArea = steps.some(({ step }) => step.driver === 'area');
  const at = [
    ...(byArea ? size : []),
    ...(shaped && profile !== null ? [profileWords(profile)] : []),
    ...byCount,
  ];
  const says = `the finishing schedule's ${Math.round(typical)}${several}`;
  return sized && at.length > 0 ? `${says}, at ${at.join(', ')}` : says;
}

/** How this class of work ran on finished pieces. */
function leanWords(row: PieceRow, finished: Pick<Review, 'classes'>, isReading: boolean): string {
  if (isReading) return 'Past years are still being read.';
  const stepClass = row.steps[0]?.step.stepClass;
  const lean = finished.classes.find((each) => each.stepClass === stepClass);
  return lean === undefined || lean.ratio === null ? 'Not yet from you.' : ranWords(lean);
}

const ranWords = ({ stepClass, ratio, pieces }: Review['classes'][number]): string =>
  `Your ${stepClass} ran ${times(ratio ?? 1)} the estimate, ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}.`;
