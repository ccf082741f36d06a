import type { Intent, IntentContext } from '../intents.ts';
import { lastNotYet } from '../late-check.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { called, factAt, isOutcome, onBench } from './context.ts';

/** Why the last "not yet" came so late. Said again it takes the place of what was said before. */
export function explainLateness(
  bench: Bench,
  intent: Extract<Intent, { do: 'explain lateness' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not noted');
  if (isOutcome(piece)) return piece;
  const check = lastNotYet(piece);
  if (check === null)
    return refuse(`Not noted: the last check of ${called(piece)} was no "not yet".`);
  const body = { piece: piece.id, check: check.fact, cause: intent.cause };
  return accept(
    [factAt(context, { kind: 'lateness-explained', body })],
    `late for ${intent.cause} on ${called(piece)}`,
    piece.id,
  );
}
