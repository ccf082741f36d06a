import type { Intent, IntentContext } from '../intents.ts';
import type { NewBenchFact } from '../facts.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece } from '../piece.ts';
import { inHand, piecesOnBench } from '../standing.ts';
import { anywhere, called, factAt, instantOf, isOutcome, onBench, stepOf } from './context.ts';
import { trimmed, wrongDescription, wrongName } from './descriptions.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** The lowest number that no piece on the bench wears. */
export function freeNumber(bench: Bench): number {
  const taken = new Set(piecesOnBench(bench).map((piece) => piece.number));
  let number = 1;
  while (taken.has(number)) number += 1;
  return number;
}

/** A new piece with its finishing schedule, under the lowest free number. Refused without a name or steps. */
export function addPiece(
  bench: Bench,
  intent: Asked<'add piece'>,
  context: IntentContext,
): Outcome {
  const name = intent.name.trim();
  const badName = wrongName(name);
  if (badName !== null) return refuse(`Not added: ${badName}`);
  const { schedule } = intent;
  if (schedule.steps.length === 0)
    return refuse(`Not added: the finishing schedule ${schedule.name} has no steps.`);
  const bad = intent.describe && wrongDescription(intent.describe, context);
  if (bad) return refuse(`Not added: ${bad}`);
  const number = freeNumber(bench);
  const piece = context.group;
  const facts: NewBenchFact[] = [
    factAt(context, {
      kind: 'piece-added',
      body: {
        piece,
        number,
        name,
        schedule: { id: schedule.id, name: schedule.name, hash: schedule.hash },
        steps: schedule.steps,
        products: schedule.products,
      },
    }),
  ];
  if (intent.describe && Object.keys(intent.describe).length > 0) {
    facts.push(
      factAt(context, {
        kind: 'piece-described',
        body: { piece, changes: trimmed(intent.describe) },
      }),
    );
  }
  return accept(facts, `${number} ${name} on the bench`, piece);
}

/** A piece leaves the bench: it is put down, and its record stays. */
export function takeOffBench(
  bench: Bench,
  intent: Asked<'take off bench'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not taken off');
  if (isOutcome(piece)) return piece;
  const putDown = puttingDown(bench, piece, context, 'Not taken off');
  if (isOutcome(putDown)) return putDown;
  return accept(
    [...putDown, factAt(context, { kind: 'piece-left-bench', body: { piece: piece.id } })],
    `${called(piece)} off the bench`,
    piece.id,
  );
}

/** A piece that left, or was removed, comes back under the lowest free number. */
export function putBackOnBench(
  bench: Bench,
  intent: Asked<'put back on bench'>,
  context: IntentContext,
): Outcome {
  const piece = anywhere(bench, intent.piece, 'Not put back');
  if (isOutcome(piece)) return piece;
  if (piece.place === 'bench') return refuse(`Not put back: ${called(piece)} is on the bench.`);
  const number = freeNumber(bench);
  return accept(
    [factAt(context, { kind: 'piece-put-back', body: { piece: piece.id, number } })],
    `${number} ${piece.name} back on the bench`,
    piece.id,
  );
}

/** A piece that should not have been there: it is put down and counts nowhere any more. Its facts stay. */
export function removePiece(
  bench: Bench,
  intent: Asked<'remove piece'>,
  context: IntentContext,
): Outcome {
  const piece = anywhere(bench, intent.piece, 'Not removed');
  if (isOutcome(piece)) return piece;
  if (piece.place === 'removed') return refuse(`Not removed: ${piece.name} is removed already.`);
  const putDown = puttingDown(bench, piece, context, 'Not removed');
  if (isOutcome(putDown)) return putDown;
  return accept(
    [...putDown, factAt(context, { kind: 'piece-removed', body: { piece: piece.id } })],
    `${called(piece)} removed`,
    piece.id,
  );
}

/** Ends the sessions that hold a piece which leaves, or refuses a time before they began. */
function puttingDown(
  bench: Bench,
  piece: Piece,
  context: IntentContext,
  not: string,
): readonly NewBenchFact[] | Outcome {
  const held = inHand(bench).filter((session) =>
    session.targets.some((target) => target.piece === piece.id),
  );
  if (context.at !== undefined && held.some((session) => session.start > instantOf(context)))
    return refuse(`${not}: ${called(piece)} was picked up after that. Give a later time.`);
  return held.map((session) =>
    factAt(context, { kind: 'put-down', body: { session: session.id } }),
  );
}

/** A note on a piece, also on one that has left, and perhaps on one of its steps. Refused when empty. */
export function writeNote(
  bench: Bench,
  intent: Asked<'write note'>,
  context: IntentContext,
): Outcome {
  const piece = anywhere(bench, intent.piece, 'Not noted');
  if (isOutcome(piece)) return piece;
  const text = intent.text.trim();
  if (text === '') return refuse('Not noted: the note is empty.');
  const step = intent.step === null ? null : stepOf(piece, intent.step, 'Not noted');
  if (step !== null && isOutcome(step)) return step;
  return accept(
    [factAt(context, { kind: 'note-written', body: { piece: piece.id, step: intent.step, text } })],
    `note on ${called(piece)}`,
    piece.id,
  );
}
