import { fromSchedule } from '../../estimate/expected.ts';
import { sessionsByPiece, workedOnStep } from '../../estimate/worked-time.ts';
import type { Expectation } from '../facts.ts';
import type { IntentContext } from '../intents.ts';
import type { Bench } from '../bench.ts';
import { instantOf } from './context.ts';
import type { StepOnLane } from './step-on-lane.ts';

/** From about so many steps of a class on, what these hands did counts for more than what is believed of anybody's. */
const usualFrom = 2.9;

/**
 * `: 80 min, your usual 55 to 95 min`, where these hands have done enough of that class to have a usual; before, and once
 * anything was learned at all, `: 80 min, expected 40 to 120 min`. It is the range that the bench told while it was in hand,
 * told in minutes as there.
 */
export function tookWords(
  bench: Bench,
  { piece, step }: StepOnLane,
  { low, high, model }: Expectation,
  context: IntentContext,
): string {
  if (model === fromSchedule) return '';
  const at = instantOf(context);
  const { recorded, setup } = workedOnStep(bench, piece, step.id, sessionsByPiece(bench), at);
  if (recorded - setup < 1) return '';
  const isUsual = (bench.estimator?.knows(step.stepClass) ?? 0) >= usualFrom;
  const [took, from, to] = [recorded - setup, low, high].map(Math.round);
  const range = from === to ? `${to}` : `${from} to ${to}`;
  return `: ${took} min, ${isUsual ? 'your usual' : 'expected'} ${range} min`;
}
