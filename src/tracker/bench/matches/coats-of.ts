import type { StepClass } from '../../trade/schedule.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { isDone, passUnderWay } from '../progress.ts';
import { isBegun } from './alike-steps.ts';

/** Coats of one product: those that are on or begun, and those still planned. */
export type CoatCount = { readonly on: number; readonly toCome: number };

const coatClasses: ReadonlySet<StepClass> = new Set([
  'prime',
  'coat, brushed',
  'coat, wiped',
  'coat, sprayed',
  'French polish',
]);

/** Whether a step lays a coat that stays on the piece. */
export const isCoat = ({ stepClass }: PlannedStep): boolean => coatClasses.has(stepClass);

/** Work beside coats that shows in the end. Repairs, hardware and scuffing may differ between two chairs that match. */
const shows: ReadonlySet<StepClass> = new Set([
  'clean',
  'strip',
  'bleach',
  'rinse, neutralise',
  'sand bare, first grit',
  'sand bare, next grit',
  'sand after bleach',
  'stain',
  'pore fill',
  'rub out',
  'wax',
]);

/** Whether two pieces that match should have it alike. */
export const showsInTheEnd = (step: PlannedStep): boolean =>
  isCoat(step) || shows.has(step.stepClass);

/** Name of what a step puts on, as its label has it; null where it names none. */
export const productName = (piece: Piece, { product }: PlannedStep): string | null =>
  product === undefined ? null : (piece.products[product]?.name ?? product);

/** Coats by product, in the order in which they come; a coat of which no product is named is of `null`. */
export function coatsOf(piece: Piece): ReadonlyMap<string | null, CoatCount> {
  const counts = new Map<string | null, CoatCount>();
  for (const step of piece.steps) {
    if (!isCoat(step)) continue;
    const name = productName(piece, step);
    const { on, toCome } = counts.get(name) ?? { on: 0, toCome: 0 };
    const made = passesMade(piece, step);
    const isOpen = !step.skipped && !isDone(piece, step.id, null);
    const left = isOpen ? Math.max(0, (step.passes ?? 1) - made) : 0;
    counts.set(name, { on: on + made, toCome: toCome + left });
  }
  return counts;
}

/** Passes that are on or begun, on that part which has most. */
export function passesMade(piece: Piece, step: PlannedStep): number {
  if (!isBegun(piece, step)) return 0;
  const finishes = piece.finishes.filter((each) => each.step === step.id);
  return Math.max(
    passUnderWay(piece.stamps.filter((stamp) => stamp.step === step.id)),
    ...finishes.map(({ pass }) => pass),
  );
}
