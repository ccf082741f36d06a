import type { Sized } from '../bench/piece.ts';
import type { Expectation } from '../bench/facts.ts';
import type { Bench } from '../bench/bench.ts';
import { countFactor } from '../trade/counts.ts';
import { profileFactor } from '../trade/profile.ts';
import type { Step } from '../trade/schedule.ts';

/** Show surface of the piece that a schedule's typical minutes are stated for, in square metres (common practice, no source). */
export const referenceAreaM2 = 1.9;

/** Work grows more slowly than area (common practice, no source). */
const areaPower = 0.85;

/** The model of expectations that nothing was learned for. */
export const fromSchedule = 'finishing schedule';

/** How many times the reference piece's minutes this piece takes, for steps that grow with area; 1 where the size isn't known. */
export const sizeFactor = (areaM2: number | null): number =>
  areaM2 === null ? 1 : (areaM2 / referenceAreaM2) ** areaPower;

/** How many times its minutes the answers to earlier questions make of a step's: an old urethane comes off slowly. */
function answersFactor({ minutesTimes = {} }: Step, answers: Sized['answers'] = {}): number {
  return Object.entries(minutesTimes).reduce((factor, [step, times]) => {
    const answer = answers[step]?.answer;
    return factor * (answer === undefined ? 1 : (times[answer] ?? 1));
  }, 1);
}

/**
 * Hands-on minutes that a step is expected to take on a piece, without setup, with the range that four in five fall into.
 * From the finishing schedule alone.
 */
export function expectedMinutes(step: Step, piece: Sized): Expectation {
  const factor =
    (step.driver === 'area' ? sizeFactor(piece.areaM2) : 1) *
    countFactor(step, piece) *
    profileFactor(step, piece.profile ?? null) *
    answersFactor(step, piece.answers);
  return {
    minutes: step.minutes.typical * factor,
    low: step.minutes.low * factor,
    high: step.minutes.high * factor,
    chance: 0.8,
    model: fromSchedule,
  };
}

/** Minutes that a step is expected to take, after what these hands have taught where they have taught anything. */
export const foreseenOn = (
  { estimator }: Pick<Bench, 'estimator'>,
  step: Step,
  piece: Sized,
): Expectation => estimator?.expects(step, piece) ?? expectedMinutes(step, piece);
