import { normalQuantile } from '../../../src/tracker/estimate/normal-quantile.ts';
import {
  foreseenDrying,
  learnDrying,
  learnedOpening,
  type LearnedDrying,
  type TriedCoat,
} from '../../../src/tracker/learning/index.ts';
import { normalShareBetween } from '../../../src/tracker/learning/normal-share.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { chance } from '../support/chance.ts';
import type { InventedShop } from './invented-shops.ts';

/** What the range for four in five holds, after so many coats that taught something. */
export type Held = {
  readonly past: number;
  readonly share: number;
  readonly standardError: number;
};

/**
 * How many of a product's coats lie within the range for four in five, foretold after each of these numbers of past
 * coats. The true offset and spread of an invented product are known, so the share is worked out instead of counted:
 * a few hundred products do for thousands of coats.
 */
export function heldAlong(
  shop: InventedShop,
  pasts: readonly number[],
  products: number,
  seed: number,
): readonly Held[] {
  const shares = pasts.map((): number[] => []);
  for (const product of inventedProducts(shop, products, seed))
    for (const learned of foreknowledge(product, Math.max(...pasts))) {
      const at = pasts.indexOf(learned.coats);
      if (at < 0) continue;
      const [low, high] = rangeOf(learned, product.label).map(
        (minutes) => (Math.log(minutes / product.label) - product.offset) / product.spread,
      );
      shares[at]?.push(normalShareBetween(low ?? NaN, high ?? NaN));
    }
  return shares.map((each, i) => {
    const share = each.reduce((sum, one) => sum + one, 0) / each.length;
    const squares = each.reduce((sum, one) => sum + (one - share) ** 2, 0);
    return { past: pasts[i] ?? NaN, share, standardError: Math.sqrt(squares) / each.length };
  });
}

/** How often a coat lies within the range that all other coats of its product tell, of products with so many coats. */
export function heldLeftOut(
  shop: InventedShop,
  coats: number,
  products: number,
  seed: number,
): number {
  let held = 0;
  let all = 0;
  for (const product of inventedProducts(shop, products, seed)) {
    const history: TriedCoat[] = [];
    const readyAfter: number[] = [];
    for (let i = 0; i < coats; i++) {
      const dries = driesAfter(product, product.part);
      const coat = triedOf(product, dries, openingBy(history, learnDrying(history), product.label));
      if (coat === null) continue;
      history.push(coat);
      readyAfter.push(dries);
    }
    history.forEach((_, i) => {
      const [low = NaN, high = NaN] = rangeOf(learnDrying(history.toSpliced(i, 1)), product.label);
      all += 1;
      if ((readyAfter[i] ?? NaN) >= low && (readyAfter[i] ?? NaN) <= high) held += 1;
    });
  }
  return held / all;
}

type Product = {
  readonly shop: InventedShop;
  readonly label: number;
  readonly offset: number;
  readonly spread: number;
  readonly part: () => number;
};

/** Spread evenly over their offsets: fewer are needed. */
function* inventedProducts(shop: InventedShop, count: number, seed: number): Generator<Product> {
  const part = chance(seed);
  for (let i = 0; i < count; i++) {
    const offset = Math.log(shop.centre) + 0.3 * normalQuantile((i + 0.5) / count);
    const spread = shop.spread * Math.exp(0.15 * normal(part));
    yield { shop, label: shop.habit.label, offset, spread, part };
  }
}

const normal = (part: () => number): number => normalQuantile(Math.max(1e-12, part()));

const rangeOf = (learned: LearnedDrying, label: number): readonly number[] =>
  [0.1, 0.9].map((p) => foreseenDrying(learned, label, p));

/** What is known before each coat of a product, up to so many that taught something. */
function* foreknowledge(product: Product, most: number): Generator<LearnedDrying> {
  const history: TriedCoat[] = [];
  for (;;) {
    const learned = learnDrying(history);
    yield learned;
    if (learned.coats >= most) return;
    const opening = openingBy(history, learned, product.label);
    let coat: TriedCoat | null = null;
    while (coat === null) coat = triedOf(product, driesAfter(product, product.part), opening);
    history.push(coat);
  }
}

const openingBy = (history: readonly TriedCoat[], learned: LearnedDrying, label: number): number =>
  (learnedOpening(label * minute, true, history, learned)?.ms ?? label * minute) / minute;

function driesAfter({ shop, label, offset, spread }: Product, part: () => number): number {
  const usual = label * Math.exp(offset + spread * normal(part));
  return part() < shop.habit.odd ? usual * Math.exp(Math.abs(normal(part))) : usual;
}

/** What is found out of a coat; null where that is nothing. */
function triedOf({ shop, label, part }: Product, dries: number, opening: number): TriedCoat | null {
  const { habit } = shop;
  const strokeAt = 9 * 60 + 8 * 60 * part();
  const awake = (at: number): number => {
    const ofDay = (strokeAt + at) % (24 * 60);
    const isNight = ofDay < 8 * 60 || ofDay > 20 * 60;
    return habit.byDay && isNight ? at + ((32 * 60 - ofDay) % (24 * 60)) + 60 * part() : at;
  };
  if (part() < habit.skips) return null;
  let notYetAt = 0;
  let at = awake(habit.first(opening, part));
  const looksReady = (): boolean => (part() < habit.wrong ? dries > at : dries <= at);
  while (!looksReady()) {
    notYetAt = at;
    if (part() < habit.givesUp) return { notYetAt, readyAt: null, expected: label };
    at = awake(habit.again(at, part));
  }
  return { notYetAt, readyAt: at, expected: label };
}
