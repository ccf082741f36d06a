import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { called, factAt, isOutcome, onBench } from './context.ts';

/** Two pieces that should come out alike; told again it is undone. Each keeps it in its own record. */
export function matchPieces(
  bench: Bench,
  intent: Extract<Intent, { do: 'match pieces' }>,
  context: IntentContext,
): Outcome {
  const not = 'Not matched';
  const piece = onBench(bench, intent.piece, not);
  if (isOutcome(piece)) return piece;
  const partner = onBench(bench, intent.partner, not);
  if (isOutcome(partner)) return partner;
  if (piece.id === partner.id)
    return refuse(`${not}: ${called(piece)} can only match another piece.`);
  const matches = !piece.partners.some((each) => each.piece === partner.id);
  const told = [
    [piece, partner],
    [partner, piece],
  ] as const;
  return accept(
    told.map(([own, other]) =>
      factAt(context, {
        kind: 'match-told',
        body: { piece: own.id, partner: other.id, name: other.name, matches },
      }),
    ),
    `${called(piece)} ${matches ? 'matches' : 'no longer matches'} ${called(partner)}`,
    piece.id,
  );
}
