import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece } from '../piece.ts';
import { called, factAt, isOutcome, onBench } from './context.ts';

/**
 * The parts of a piece that are worked apart; none makes it one again. Refused for a part that has work on it and is
 * left out.
 */
export function nameParts(
  bench: Bench,
  intent: Extract<Intent, { do: 'name parts' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not noted');
  if (isOutcome(piece)) return piece;
  const names = intent.names.map((name) => name.trim()).filter((name) => name !== '');
  const double = names.find((name, index) => names.indexOf(name) !== index);
  if (double !== undefined)
    return refuse(`Not noted: two parts are called "${double}"; give each a name of its own.`);
  const parts = names.map((name, index) => ({
    id: piece.parts.find((part) => part.name === name)?.id ?? `${context.group}-${index + 1}`,
    name,
  }));
  const gone = piece.parts.find(
    (part) => !parts.some((each) => each.id === part.id) && hasRecord(bench, piece, part.id),
  );
  if (gone) return refuse(`Not noted: ${gone.name} has work recorded on it; keep it in the list.`);
  return accept(
    [factAt(context, { kind: 'parts-named', body: { piece: piece.id, parts } })],
    names.length === 0
      ? `no parts on ${called(piece)}`
      : `parts of ${called(piece)}: ${names.join(', ')}`,
    piece.id,
  );
}

const hasRecord = (bench: Bench, piece: Piece, part: string): boolean =>
  [...piece.stamps, ...piece.finishes, ...piece.checks].some((record) => record.part === part) ||
  bench.sessions.some(
    (session) =>
      !session.dropped &&
      session.targets.some((target) => target.piece === piece.id && target.part === part),
  );
