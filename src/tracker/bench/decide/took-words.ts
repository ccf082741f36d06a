import { fromSchedule } from '../../estimate/expected.ts';
import { sessionsByPiece, workedOnStep } from '../../estimate/worked-time.ts';
import type { Expectation } from '../facts.ts';
import type { IntentContext } from '../intents.ts';
import type { Bench, Piece, PlannedStep } from '../piece.ts';
import { instantOf } from './context.ts';

/** `: 1:20, your usual 0:55 to 1:30`, where these hands have taught what is usual. */
export function tookWords(
  bench: Bench,
  piece: Piece,
  step: PlannedStep,
  { low, high, model }: Expectation,
  context: IntentContext,
): string {
  if (model === fromSchedule) return '';
  const at = instantOf(context);
  const { recorded, setup } = workedOnStep(bench, piece, step.id, sessionsByPiece(bench), at);
  if (recorded - setup < 1) return '';
  const [took, from, to] = [recorded - setup, low, high].map(hoursAndMinutes);
  return `: ${took}, your usual ${from} to ${to}`;
}

function hoursAndMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
