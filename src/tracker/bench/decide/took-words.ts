import { fromSchedule } from '../../estimate/expected.ts';
import { sessionsByPiece, workedOnStep } from '../../estimate/worked-time.ts';
import type { Expectation } from '../facts.ts';
import type { IntentContext } from '../intents.ts';
import type { Bench, Piece, PlannedStep } from '../piece.ts';
import { instantOf } from './context.ts';

/** `: 80 min, your usual 55 to 95 min`, where these hands have taught what is usual. */
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
  const [took, from, to] = [recorded - setup, low, high].map(Math.round);
  return `: ${inWords(took)}, your usual ${rangeInWords(from, to)}`;
}

const rangeInWords = (from = 0, to = 0): string =>
  to < minutesTold ? `${from} to ${inWords(to)}` : `${inWords(from)} to ${inWords(to)}`;

/** From here on hours read better. A figure like 1:20 would be a count-down of seconds. */
const minutesTold = 100;

function inWords(minutes = 0): string {
  if (minutes < minutesTold) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
}
