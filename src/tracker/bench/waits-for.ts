import type { Window } from '../windows/model.ts';
import { isDone } from './progress.ts';
import type { Piece, PlannedStep } from './piece.ts';
import { rulesOf } from './sorted-piece.ts';

/**
 * Whether a step waits for that very window of a piece: it needs its milestone, and no step that is still to do before
 * it starts the milestone anew. A scuff waits for the coat that is to go on before it, not for the one under that.
 */
export function waitsFor(
  piece: Piece,
  step: PlannedStep,
  { rule, subject }: Pick<Window, 'rule' | 'subject'>,
  part: string | null,
): boolean {
  const { milestone } = rule;
  if (milestone === undefined || !step.needs.includes(milestone) || subject.stepId === step.id)
    return false;
  const from = piece.steps.findIndex(({ id }) => id === subject.stepId);
  const till = piece.steps.indexOf(step);
  return !piece.steps
    .slice(from + 1, Math.max(from + 1, till))
    .some(
      (between) =>
        !between.skipped &&
        !isDone(piece, between.id, part) &&
        rulesOf(piece, between).some((each) => each.milestone === milestone),
    );
}
