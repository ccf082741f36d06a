import type { Bench } from '../bench/bench.ts';
import type { Piece } from '../bench/piece.ts';
import { sortedPiece, type SortedPiece } from '../bench/sorted-piece.ts';
import { minute, type Instant } from '../time/index.ts';
import type { Product } from '../trade/schedule.ts';
import type { AirSense, Milestone } from '../windows/model.ts';
import { mayTeach } from './taught-steps.ts';
import { triedWindow, type KeptOut } from './tried-window.ts';

/** How long after its last stroke a coat was tried: by the clock, and as long as that is at the label's own air. */
export type TriedAt = { readonly minutes: number; readonly labelMinutes: number };

/**
 * One coat that was tried for one milestone: last found "not yet", and first found ready after that; null for neither.
 * Plain values: the cache of the history holds them.
 */
export type DriedCoat = {
  readonly piece: string;
  /** The product, as `productKey` names it. */
  readonly product: string;
  readonly productName: string;
  readonly milestone: Milestone;
  /** When its last stroke was. */
  readonly at: Instant;
  readonly notYet: TriedAt | null;
  readonly ready: TriedAt | null;
};

/** So many coats of a product and milestone count, the latest: cans and hands change. */
const coatsKept = 20;

/** A can of another edition is the same product; one of another chemistry under the same id is not. */
export const productKey = ({ id, chemistry }: Product): string => `${id}, ${chemistry}`;

/** In the order of their last strokes, the latest of each product and milestone. */
export function latestCoats(coats: readonly DriedCoat[]): readonly DriedCoat[] {
  const counted = new Map<string, number>();
  return coats
    .toSorted((a, b) => b.at - a.at || (a.piece < b.piece ? -1 : a.piece > b.piece ? 1 : 0))
    .filter(({ product, milestone }) => {
      const key = `${product}/${milestone}`;
      const count = (counted.get(key) ?? 0) + 1;
      counted.set(key, count);
      return count <= coatsKept;
    })
    .reverse();
}

/** What was learned before, with what the pieces of a bench say now: each speaks for itself alone. */
export const withCoatsOf = (
  before: readonly DriedCoat[],
  bench: Bench,
  air: AirSense,
  except: readonly string[] = [],
): readonly DriedCoat[] =>
  latestCoats([
    ...before.filter(({ piece }) => !bench.pieces.has(piece)),
    ...[...bench.pieces.values()]
      .filter((piece) => mayTeach(piece) && !except.includes(piece.id))
      .flatMap((piece) => coatsOfPiece(piece, air)),
  ]);

const known = new WeakMap<
  Piece,
  { readonly air: AirSense; readonly coats: readonly DriedCoat[] }
>();

/** A piece that no fact touched keeps its object: nothing is worked out twice for it in the same air. */
function coatsOfPiece(piece: Piece, air: AirSense): readonly DriedCoat[] {
  if (piece.checks.length === 0) return [];
  const before = known.get(piece);
  if (before?.air === air) return before.coats;
  const sorted = sortedPiece(piece, []);
  const coats = [...new Set(piece.checks.map(({ window }) => window))].flatMap(
    (window) => coatOfWindow(sorted, window, air) ?? [],
  );
  known.set(piece, { air, coats });
  return coats;
}

/** Null where what was tried teaches nothing. */
function coatOfWindow(sorted: SortedPiece, key: string, air: AirSense): DriedCoat | null {
  const window = triedWindow(sorted, key);
  if (window === null || window.keptOut !== null) return null;
  const { product, opening, strokeAt, lastNotYet, ready } = window;
  if (lastNotYet === undefined && ready === undefined) return null;
  const tried = (check: { readonly at: Instant } | undefined): TriedAt | null =>
    check === undefined
      ? null
      : {
          minutes: (check.at - strokeAt) / minute,
          labelMinutes: air.labelTime(opening.span, strokeAt, check.at) / minute,
        };
  return {
    piece: sorted.piece.id,
    product: productKey(product),
    productName: product.name,
    milestone: opening.milestone,
    at: strokeAt,
    notYet: tried(lastNotYet),
    ready: tried(ready),
  };
}

/** A coat on the bench that was tried and teaches nothing, for whoever wonders where it is. */
export type CoatKeptOut = {
  readonly product: string;
  readonly milestone: Milestone;
  readonly at: Instant;
  readonly because: KeptOut;
};

/** The latest last. Coats of pieces that are left out as a whole are not told. */
export const coatsKeptOut = (bench: Bench): readonly CoatKeptOut[] =>
  [...bench.pieces.values()]
    .filter((piece) => piece.checks.length > 0 && mayTeach(piece))
    .flatMap((piece) => {
      const sorted = sortedPiece(piece, []);
      return [...new Set(piece.checks.map(({ window }) => window))].flatMap((key) => {
        const window = triedWindow(sorted, key);
        if (window === null || window.keptOut === null) return [];
        const { product, opening, strokeAt: at, keptOut: because } = window;
        return [{ product: productKey(product), milestone: opening.milestone, at, because }];
      });
    })
    .sort((a, b) => a.at - b.at);
