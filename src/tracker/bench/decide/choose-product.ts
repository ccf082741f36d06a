import type { Product } from '../../trade/schedule.ts';
import type { Milestone } from '../../windows/model.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, warningOf, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { called, factAt, isOutcome, onBench, stepOf } from './context.ts';
import { wrongCan } from './pot-of-stamp.ts';

const not = 'Not changed';

/** Another product for a step that is not begun: the piece takes its own copy, so that no file can change it later. */
export function chooseProduct(
  bench: Bench,
  intent: Extract<Intent, { do: 'use product' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, not);
  if (isOutcome(piece)) return piece;
  const step = stepOf(piece, intent.step, not);
  if (isOutcome(step)) return step;
  const { product } = intent;
  const isBegun = [...piece.stamps, ...piece.finishes].some((record) => record.step === step.id);
  if (isBegun)
    return refuse(
      `${not}: ${step.name} on ${called(piece)} is begun; what was put on stays on record. i inserts another step.`,
    );
  if (step.product === undefined && step.stamps.length === 0)
    return refuse(`${not}: ${step.name} on ${called(piece)} puts nothing on.`);
  const before = step.product === undefined ? undefined : piece.products[step.product];
  if (isSame(before, product))
    return refuse(`${not}: ${step.name} on ${called(piece)} uses ${product.name} already.`);
  const key = keyFor(piece, product, context);
  const after = { ...piece, products: { ...piece.products, [key]: product } };
  return accept(
    [
      factAt(context, {
        kind: 'product-chosen',
        body: { piece: piece.id, step: step.id, key, product },
      }),
    ],
    `${product.name} for ${step.name} on ${called(piece)}`,
    piece.id,
    warningOf(
      wrongCan(bench, after, { ...step, product: key }, context),
      unmet(piece, step, before, product),
    ),
  );
}

const isSame = (a: Product | undefined, b: Product): boolean =>
  a !== undefined && JSON.stringify(a) === JSON.stringify(b);

/** Its id; where another edition under that id is on the piece already, a name of its own, so that neither changes. */
function keyFor(piece: Piece, product: Product, context: IntentContext): string {
  const known = piece.products[product.id];
  return known === undefined || isSame(known, product)
    ? product.id
    : `${product.id}, ${context.group}`;
}

/** A milestone that later steps wait for, and that the new product doesn't start as the old one did; null if none. */
function unmet(
  piece: Piece,
  step: PlannedStep,
  before: Product | undefined,
  product: Product,
): string | null {
  const later = piece.steps.slice(piece.steps.indexOf(step) + 1);
  const lost = milestonesOf(before).filter((each) => !milestonesOf(product).includes(each));
  for (const waiting of later) {
    const need = waiting.needs.find((each) => lost.includes(each));
    if (need !== undefined && !waiting.skipped)
      return `${product.name} tells no time for "${need}", which ${waiting.name} waits for`;
    // From the next coat on, that one's milestones count.
    if (waiting.product !== undefined) return null;
  }
  return null;
}

const milestonesOf = (product: Product | undefined): readonly Milestone[] =>
  [
    ...(product?.windows ?? []),
    ...(product?.byWood?.soft ?? []),
    ...(product?.byWood?.hard ?? []),
  ].flatMap(({ milestone }) => milestone ?? []);
