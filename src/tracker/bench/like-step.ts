import type { Step } from '../trade/schedule.ts';
import type { Piece, PlannedStep } from './piece.ts';
import { isDone } from './progress.ts';
import { stepUnderWay } from './step-under-way.ts';

/**
 * The step with which a piece joins others that are worked in one go: of what is still to do the first like theirs, in
 * class and product, else in class. Where it has none, the step that it is at.
 *
 * @param like the step that the others are at; null for work that belongs to no step
 */
export function likeStep(
  piece: Piece,
  part: string | null,
  like: Pick<Step, 'stepClass' | 'product'> | null,
): PlannedStep | null {
  if (like === null) return null;
  const atNow = stepUnderWay(piece, part, null);
  const toDo = piece.steps.filter((step) => !step.skipped && !isDone(piece, step.id, part));
  const alike = [...(atNow === null ? [] : [atNow]), ...toDo].filter(
    ({ stepClass }) => stepClass === like.stepClass,
  );
  return alike.find(({ product }) => product === like.product) ?? alike[0] ?? atNow;
}
