import type { WindowRule } from '../windows/model.ts';
import { putOn, topAfter, type SurfaceWork } from './layers.ts';
import { oldFinish, over, type OverRow, type OverTable } from './over.ts';
import type { Product, Step } from './schedule.ts';

/** A step that puts something over what may not lie under it, or not yet. */
export type Misfit = {
  /** Its place in the sequence, from 0. */
  readonly index: number;
  readonly below: string;
  readonly above: string;
  readonly row: OverRow;
};

type Planned = Pick<Step, 'name' | 'stepClass' | 'needs' | 'product' | 'windows' | 'trialFor'>;
type Work = SurfaceWork & { readonly index: number };

/**
 * Holds a finishing schedule's own sequence against the table. What came with the piece is not known, so the first coat
 * over it is not judged; nor is what only the eye can tell.
 */
export function misfitsInSequence(
  steps: readonly Planned[],
  products: Readonly<Record<string, Product>>,
  table: OverTable,
): readonly Misfit[] {
  const works = steps.map((step, index): Work => ({
    name: step.name,
    // What is tried on a patch or a board covers nothing of the piece.
    stepClass: step.trialFor === undefined ? step.stepClass : 'other',
    productClass:
      step.trialFor === undefined ? (productOf(step, products)?.productClass ?? null) : null,
    index,
  }));
  return works.flatMap((work, index): readonly Misfit[] => {
    const above = putOn(work, table);
    if (above === null) return [];
    const top = topAfter(works.slice(0, index), table);
    if (top.productClass === oldFinish) return [];
    const { row } = over(table, top.productClass, above);
    if (row === null) return [];
    const from = top.work?.index;
    const isMet =
      row.verdict === 'yes' ||
      (row.verdict === 'after' &&
        (row.first === 'judgement' ||
          (row.first === 'scuffed' && top.scuffed) ||
          (row.first === 'dry' &&
            (from === undefined || isWaitedFor(steps, from, index, products)))));
    return isMet ? [] : [{ index, below: top.productClass, above, row }];
  });
}

const productOf = (
  { product }: Pick<Step, 'product'>,
  products: Readonly<Record<string, Product>>,
): Product | undefined => (product === undefined ? undefined : products[product]);

/** Whether a step up to `to` waits for a milestone of the step at `from`. Where that starts none, nothing can wait for it. */
function isWaitedFor(
  steps: readonly Planned[],
  from: number,
  to: number,
  products: Readonly<Record<string, Product>>,
): boolean {
  const step = steps[from];
  if (step === undefined) return true;
  const product = productOf(step, products);
  const rules: readonly WindowRule[] = [
    ...(product?.windows ?? []),
    ...(product?.byWood?.hard ?? []),
    ...step.windows,
  ];
  const started = rules.flatMap(({ milestone }) => milestone ?? []);
  return (
    started.length === 0 ||
    steps.slice(from + 1, to + 1).some(({ needs }) => needs.some((need) => started.includes(need)))
  );
}
