import { bareWood, isInGroup, oldFinish, type OverTable } from './over.ts';
import type { StepClass } from './schedule.ts';

/** Work on a surface, as far as it changes what lies there: a step with the class of its product. */
export type SurfaceWork = {
  readonly name: string;
  readonly stepClass: StepClass;
  readonly productClass: string | null;
};

/** What lies on top: its class, which work put it there (null: it came so), and whether it was dulled since. */
export type Top<Work extends SurfaceWork = SurfaceWork> = {
  readonly productClass: string;
  readonly work: Work | null;
  readonly scuffed: boolean;
};

const baring: ReadonlySet<StepClass> = new Set([
  'sand bare, first grit',
  'sand bare, next grit',
  'strip',
]);
const dulling: ReadonlySet<StepClass> = new Set(['scuff', 'rub out', 'sand after bleach']);

/**
 * What lies on a surface after work in its order, the last on top. Stripping and sanding bare begin anew. A rinse takes
 * up bleach and stripper, and then lies there itself till it has dried. Glue stays in its joints and is no layer.
 */
export function layersAfter<Work extends SurfaceWork>(
  works: readonly Work[],
  table: OverTable,
): readonly Top<Work>[] {
  let layers: readonly Top<Work>[] = [untouched];
  for (const work of works) layers = withWork(layers, work, table);
  return layers;
}

const untouched = { productClass: oldFinish, work: null, scuffed: false } as const;
const bare = { productClass: bareWood, work: null, scuffed: false } as const;

/** The uppermost layer after work in its order. */
export const topAfter = <Work extends SurfaceWork>(
  works: readonly Work[],
  table: OverTable,
): Top<Work> => layersAfter(works, table).at(-1) ?? untouched;

/** The class of what a step puts on: its product's, else what such steps usually put on; null for none. */
export const putOn = (
  { productClass, stepClass }: SurfaceWork,
  { usual }: OverTable,
): string | null => productClass ?? usual[stepClass] ?? null;

function withWork<Work extends SurfaceWork>(
  layers: readonly Top<Work>[],
  work: Work,
  table: OverTable,
): readonly Top<Work>[] {
  const is = (group: string, each: string | null): boolean =>
    each !== null && isInGroup(table, group, each);
  const productClass = putOn(work, table);
  const top = (each: string): Top<Work> => ({ productClass: each, work, scuffed: false });
  if (work.stepClass === 'strip' || is('strippers', productClass))
    return productClass === null ? [bare] : [bare, top(productClass)];
  if (baring.has(work.stepClass)) return [bare];
  if (is('glues', productClass)) return layers;
  if (is('rinses', productClass) || work.stepClass === 'rinse, neutralise') {
    const left = layers.filter(
      (each) => !['bleaches', 'strippers', 'rinses'].some((group) => is(group, each.productClass)),
    );
    return productClass === null ? left : [...left, top(productClass)];
  }
  if (productClass !== null) return [...layers, top(productClass)];
  if (work.stepClass === 'clean' && /\bwax\b/i.test(work.name))
    return layers.filter((each) => !is('waxes', each.productClass));
  if (!dulling.has(work.stepClass)) return layers;
  return layers.map((each, index) =>
    index === layers.length - 1 ? { ...each, scuffed: true } : each,
  );
}
