import { expectedMinutes, fromSchedule } from '../../estimate/expected.ts';
import { sessionsByPiece, workedOnStep } from '../../estimate/worked-time.ts';
import type { Expectation } from '../facts.ts';
import type { IntentContext } from '../intents.ts';
import type { Bench } from '../piece.ts';
import { instantOf } from './context.ts';
import type { WorkedStep } from './worked-step.ts';

/** From about so many steps of a class on, what these hands did counts for more than what is believed of anybody's. */
const usualFrom = 2.9;

/**
 * `: 80 min, your usual 55 to 95 min`, where these hands have done enough of that class to have a usual; before, and once
 * anything was learned at all, `: 80 min, schedule says 40 to 120 min`.
 */
export function tookWords(
  bench: Bench,
  { piece, step }: WorkedStep,
  { low, high, model }: Expectation,
  context: IntentContext,
): string {
  if (model === fromSchedule) return '';
  const at = instantOf(context);
  const { recorded, setup } = workedOnStep(bench, piece, step.id, sessionsByPiece(bench), at);
  if (recorded - setup < 1) return '';
  const isUsual = (bench.estimator?.knows(step.stepClass) ?? 0) >= usualFrom;
  const told = isUsual ? { low, high } : expectedMinutes(step, piece);
  const [took, from, to] = [recorded - setup, told.low, told.high].map(Math.round);
  return `: ${minutesInWords(took)}, ${isUsual ? 'your usual' : 'schedule says'} ${rangeInWords(from, to)}`;
}

const rangeInWords = (from = 0, to = 0): string =>
  to < minutesTold
    ? `${from} to ${minutesInWords(to)}`
    : `${minutesInWords(from)} to ${minutesInWords(to)}`;

/** From here on hours read better. A figure like 1:20 would be a count-down of seconds. */
const minutesTold = 100;

/** `80 min`, `2 h 03`. */
export function minutesInWords(minutes = 0): string {
  if (minutes < minutesTold) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
}
