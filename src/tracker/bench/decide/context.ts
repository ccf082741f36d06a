import { nearest } from '../../trade/nearest.ts';
import type { Instant } from '../../time/index.ts';
import type { NewBenchFact } from '../facts.ts';
import type { IntentContext } from '../intents.ts';
import { refuse, type Outcome } from '../outcome.ts';
import type { Bench, Piece } from '../piece.ts';
import { piecesOnBench } from '../standing.ts';

/** The instant an intent is about. */
export const instantOf = (context: IntentContext): Instant => context.at ?? context.now;

/** A fact at the instant the intent is about. */
export const factAt = (context: IntentContext, fact: NewBenchFact): NewBenchFact =>
  context.at === undefined ? fact : { ...fact, at: context.at };

/** `4 Side table`, or the name alone once it has left the bench. */
export const called = (piece: Piece): string =>
  piece.number === null ? piece.name : `${piece.number} ${piece.name}`;

/** Finds a piece on the bench, or refuses. `not` is the beginning of the refusal: `Not picked up`. */
export function onBench(bench: Bench, id: string, not: string): Piece | Outcome {
  const piece = bench.pieces.get(id);
  if (piece === undefined) {
    return refuse(`${not}: there is no piece "${id}".`, nearestNames(bench, id));
  }
  if (piece.place !== 'bench')
    return refuse(`${not}: ${piece.name} is not on the bench. Put it back first.`);
  return piece;
}

export const isOutcome = (value: object): value is Outcome => 'ok' in value;

const nearestNames = (bench: Bench, text: string): readonly string[] =>
  nearest(
    text,
    piecesOnBench(bench).map((piece) => piece.name),
  );

/** Refuses an instant in the future. */
export function notInFuture(context: IntentContext, not: string): Outcome | null {
  if (instantOf(context) <= context.now) return null;
  return refuse(`${not}: that time is still to come. Give one that has passed.`);
}
