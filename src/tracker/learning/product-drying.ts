import { minute, type Milliseconds } from '../time/index.ts';
import type { Product } from '../trade/schedule.ts';
import type { Milestone, OwnTime, Span } from '../windows/model.ts';
import { movableOpening } from '../windows/own-time.ts';
import { productKey, type CoatKeptOut, type DriedCoat } from './dried-coats.ts';
import { coatsTried, dryingTimesFrom, learnedOf, type DryingBook } from './drying-book.ts';
import { foreseenDrying } from './drying-times.ts';

/** The chance of the range that is told. */
export const dryingChance = 0.8;

/** What is known of one product's time to one milestone, in the label's own air. */
export type MilestoneDrying = {
  readonly milestone: Milestone;
  readonly label: Milliseconds;
  /** The label's figure with the law by which air moves it. */
  readonly span: Span;
  /** Null before the first coat that teaches. In minutes: the middle, and the range for 8 in 10. */
  readonly yours: { readonly median: number; readonly low: number; readonly high: number } | null;
  /** Coats that teach, and those of them that were found ready. */
  readonly coats: number;
  readonly found: number;
  /** By what its windows open; null by the label. */
  readonly opens: OwnTime | null;
  /** Coats on the bench that were tried and teach nothing, the latest first. */
  readonly keptOut: readonly CoatKeptOut[];
  /** The last three that were tried, the latest first. */
  readonly lastCoats: readonly DriedCoat[];
};

const lastFew = 3;

/** Every milestone of a product that checks may move. */
export function dryingOfProduct(
  product: Product,
  book: DryingBook,
  inAir: boolean,
  keptOut: readonly CoatKeptOut[] = [],
): readonly MilestoneDrying[] {
  const { own } = dryingTimesFrom(() => book, inAir);
  return product.windows.flatMap((rule) => {
    const opening = movableOpening(rule);
    if (opening === null) return [];
    const { milestone, span } = opening;
    const tried = coatsTried(book, product, milestone);
    const { learned } = learnedOf(tried, milestone, span.ms, inAir);
    const by = (p: number): number => foreseenDrying(learned, span.ms / minute, p);
    const yours =
      learned.coats === 0
        ? null
        : { median: by(0.5), low: by((1 - dryingChance) / 2), high: by((1 + dryingChance) / 2) };
    const { coats, found } = learned;
    const lastCoats = tried.slice(-lastFew).reverse();
    return [
      {
        milestone,
        label: span.ms,
        span,
        yours,
        coats,
        found,
        opens: own(product, rule),
        keptOut: keptOut
          .filter((each) => each.milestone === milestone && each.product === productKey(product))
          .reverse(),
        lastCoats,
      },
    ];
  });
}
