import type { DryingTimes } from '../bench/bench.ts';
import { minute, type Milliseconds } from '../time/index.ts';
import type { Product } from '../trade/schedule.ts';
import type { Milestone } from '../windows/model.ts';
import { movableOpening } from '../windows/own-time.ts';
import { productKey, type DriedCoat, type TriedAt } from './dried-coats.ts';
import { learnDrying, type LearnedDrying, type TriedCoat } from './drying-times.ts';
import { learnedOpening } from './learned-opening.ts';

/** The coats of each product, by its key. Those of a product stay one object for as long as they are the same. */
export type DryingBook = ReadonlyMap<string, readonly DriedCoat[]>;

/** @param before what was known until now: products of which nothing else is known keep their objects */
export function dryingBook(coats: readonly DriedCoat[], before?: DryingBook): DryingBook {
  const book = new Map<string, DriedCoat[]>();
  for (const coat of coats) {
    const own = book.get(coat.product);
    if (own === undefined) book.set(coat.product, [coat]);
    else own.push(coat);
  }
  const kept = [...book].map(([key, own]): [string, readonly DriedCoat[]] => {
    const earlier = before?.get(key);
    return [key, earlier !== undefined && isSame(earlier, own) ? earlier : own];
  });
  return new Map(kept);
}

const isSame = (one: readonly DriedCoat[], other: readonly DriedCoat[]): boolean =>
  one.length === other.length &&
  one.every((coat, i) => coat === other[i] || JSON.stringify(coat) === JSON.stringify(other[i]));

/**
 * Foretells drying times from a book.
 *
 * @param book asked when something is first wanted of it
 * @param inAir whether the air's readings count: else coats are taken as long as the clock says
 */
export function dryingTimesFrom(book: () => DryingBook, inAir: boolean): DryingTimes {
  return {
    basis: (product) => book().get(productKey(product)),
    own: (product, rule) => {
      const opening = movableOpening(rule);
      const coats = opening === null ? undefined : book().get(productKey(product));
      if (opening === null || coats === undefined) return null;
      const { tried, learned } = learnedOf(coats, opening.milestone, opening.span.ms, inAir);
      return tried.length === 0
        ? null
        : learnedOpening(opening.span.ms, opening.maySooner, tried, learned);
    },
  };
}

export type ProductDrying = {
  readonly tried: readonly TriedCoat[];
  readonly learned: LearnedDrying;
};

/** A grid costs milliseconds: the same coats and the same label's figure are worked out once. */
const knownOf = new WeakMap<readonly DriedCoat[], Map<string, ProductDrying>>();

/** What the coats of one product teach of one milestone, where its label now says `label`. */
export function learnedOf(
  coats: readonly DriedCoat[],
  milestone: Milestone,
  label: Milliseconds,
  inAir: boolean,
): ProductDrying {
  const known = knownOf.get(coats) ?? new Map<string, ProductDrying>();
  knownOf.set(coats, known);
  const key = `${milestone}/${label}/${inAir}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const minutes = (tried: TriedAt): number => (inAir ? tried.labelMinutes : tried.minutes);
  const tried = coats
    .filter((coat) => coat.milestone === milestone)
    .map(({ notYet, ready }) => ({
      notYetAt: notYet === null ? 0 : minutes(notYet),
      readyAt: ready === null ? null : minutes(ready),
      expected: label / minute,
    }));
  const now = { tried, learned: learnDrying(tried) };
  known.set(key, now);
  return now;
}

/** The coats of a product in a book that were tried for a milestone, the last of them last. */
export const coatsTried = (
  book: DryingBook,
  product: Product,
  milestone: Milestone,
): readonly DriedCoat[] =>
  (book.get(productKey(product)) ?? []).filter((coat) => coat.milestone === milestone);
