import type { Session } from './bench.ts';
import type { Piece, PlannedStep } from './piece.ts';
import { countsFor, currentStep, isDone, stampsOf } from './progress.ts';

/**
 * The step that the keys go on with for one part (null: the whole piece): the one in hand, also one that was done before
 * and is picked up once more, else one that was begun before its turn and has something on the surface, else the first
 * that is neither skipped nor done. Steps are picked up out of their order, and what runs on them must not be left for an
 * earlier one by a single key.
 *
 * @param session the open session that holds the piece, if one does
 */
export function stepUnderWay(
  piece: Piece,
  part: string | null,
  session: Session | null,
): PlannedStep | null {
  const toDo = piece.steps.filter((step) => !step.skipped && !isDone(piece, step.id, part));
  const held = session?.targets.find(
    (target) => target.piece === piece.id && countsFor(target.part, part),
  )?.step;
  const again = session === null || held === null ? undefined : redone(piece, part, session, held);
  return (
    toDo.find((step) => step.id === held) ??
    again ??
    toDo.find((step) => stampsOf(piece, step.id, part).length > 0) ??
    currentStep(piece, part)
  );
}

/** The step in hand, where all that finished it happened before it was picked up: the hands are at it again. */
const redone = (
  piece: Piece,
  part: string | null,
  { start }: Session,
  held: string | undefined,
): PlannedStep | undefined =>
  piece.steps.find(
    ({ id, skipped }) =>
      id === held &&
      !skipped &&
      piece.finishes.every(
        (finish) =>
          finish.step !== id ||
          finish.at < start ||
          (part !== null && !countsFor(finish.part, part)),
      ),
  );
