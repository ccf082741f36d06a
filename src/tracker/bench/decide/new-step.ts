import { nearest } from '../../trade/nearest.ts';
import type { Step } from '../../trade/schedule.ts';
import { refuse, type Outcome } from '../outcome.ts';
import type { Piece } from '../piece.ts';
import { called } from './context.ts';

/** Refuses a step that a piece can't take: one without a name, or with a product that the piece doesn't carry. */
export function wrongNewStep(piece: Piece, step: Omit<Step, 'id'>, not: string): Outcome | null {
  if (step.name.trim() === '') return refuse(`${not}: a step needs a name.`);
  if (step.product === undefined || Object.hasOwn(piece.products, step.product)) return null;
  return refuse(
    `${not}: ${called(piece)} has no product "${step.product}".`,
    nearest(step.product, Object.keys(piece.products)),
  );
}
