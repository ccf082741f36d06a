import type { IntentContext } from '../intents.ts';
import { refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece } from '../piece.ts';
import { everyStampOf, stampsOf } from '../progress.ts';
import { sessionHolding } from '../standing.ts';
import { called, instantOf } from './context.ts';
import type { StepOnLane } from './step-on-lane.ts';

/** Stamps of a step keep their order: none lies before the last one. */
export function notBeforeLast(
  { piece, part, step }: StepOnLane,
  context: IntentContext,
  not: string,
): Outcome | null {
  const made = part === null ? everyStampOf(piece, step.id) : stampsOf(piece, step.id, part);
  const last = made.reduce((latest, stamp) => Math.max(latest, stamp.at), 0);
  if (context.at === undefined || instantOf(context) >= last) return null;
  return refuse(
    `${not}: ${called(piece)} has a later stamp on that step. Take it back first, or give a later time.`,
  );
}

/** What is in hand is not stamped before it was picked up, unless it was in hand at that time as well. */
export function notBeforePickUp(
  bench: Bench,
  piece: Piece,
  { at }: IntentContext,
  not: string,
): Outcome | null {
  const held = sessionHolding(bench, piece.id);
  if (at === undefined || held === null) return null;
  const wasHeld = bench.sessions.some(
    ({ start, end, dropped, targets }) =>
      !dropped &&
      start <= at &&
      (end === null || at <= end) &&
      targets.some((target) => target.piece === piece.id),
  );
  if (wasHeld) return null;
  return refuse(
    `${not}: ${called(piece)} was picked up after that. Give a later time, or correct that session first (m, then w).`,
  );
}
