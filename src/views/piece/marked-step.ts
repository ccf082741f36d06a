import { currentStep, isDone, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import type { PieceState } from '../screens.ts';

/** The marked step: the one that was marked, else the current one, else the last. Null only for a piece without steps. */
export const markedStep = ({ at }: PieceState, piece: Piece): PlannedStep | null =>
  piece.steps.find(({ id }) => id === at) ?? currentStep(piece, null) ?? piece.steps.at(-1) ?? null;

export const isToDo = (piece: Piece, step: PlannedStep): boolean =>
  !step.skipped && !isDone(piece, step.id, null);

/** The step that Enter takes in hand: the marked one if it is to do, else the current one. */
export function stepToPickUp(state: PieceState, piece: Piece): PlannedStep | null {
  const marked = markedStep(state, piece);
  return marked !== null && isToDo(piece, marked) ? marked : currentStep(piece, null);
}

/** How far each key moves the mark. */
const moves: Readonly<Record<string, number>> = {
  up: -1,
  down: 1,
  'page up': -5,
  'page down': 5,
  home: Number.NEGATIVE_INFINITY,
  end: Number.POSITIVE_INFINITY,
};

/** The step that is marked after a key; null for a key that doesn't move the mark. */
export function markAfter(key: string, state: PieceState, piece: Piece): string | null {
  const by = moves[key];
  const marked = markedStep(state, piece);
  if (by === undefined || marked === null) return null;
  const last = piece.steps.length - 1;
  const index = Math.min(last, Math.max(0, piece.steps.indexOf(marked) + by));
  return piece.steps[index]?.id ?? null;
}
