import { coatWeightOf } from '../bench/coat-weight.ts';
import { happeningsOf } from '../bench/happenings.ts';
import type { Bench, Piece } from '../bench/piece.ts';
import { countsFor } from '../bench/progress.ts';
import { rulesOf, workedPiece, type WorkedPiece } from '../bench/worked-piece.ts';
import { minute, type Instant } from '../time/index.ts';
import type { Product } from '../trade/schedule.ts';
import { chooseStamp } from '../windows/edges.ts';
import type { AirSense, Milestone } from '../windows/model.ts';
import { movableOpening } from '../windows/own-time.ts';
import { mayTeach } from './taught-steps.ts';

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
  const worked = workedPiece(piece, []);
  const coats = [...new Set(piece.checks.map(({ window }) => window))].flatMap(
    (window) => coatOfWindow(worked, window, air) ?? [],
  );
  known.set(piece, { air, coats });
  return coats;
}

/** Null where the window is no coat's, or what was tried of it teaches nothing. */
function coatOfWindow(worked: WorkedPiece, key: string, air: AirSense): DriedCoat | null {
  const { piece } = worked;
  const first = piece.checks.find(({ window }) => window === key);
  const step = piece.steps.find(({ id }) => id === first?.step);
  const product = step?.product === undefined ? undefined : piece.products[step.product];
  const [, , ruleId, , pass] = key.split('/');
  if (first === undefined || step === undefined || product === undefined) return null;
  const rule = rulesOf(piece, step).find(({ id }) => id === ruleId);
  const opening = rule === undefined ? null : movableOpening(rule);
  if (rule === undefined || opening === null || isOutlier(piece, step.id, first.part, Number(pass)))
    return null;
  const subject = {
    pieceId: piece.id,
    stepId: step.id,
    partId: first.part,
    pass: Number(pass),
    section: null,
  };
  const happenings = happeningsOf(worked, step, rule, subject, key);
  const stroke = chooseStamp(opening.edge.stamp, happenings);
  if (!stroke.known || stroke.assumed) return null;
  const checks = happenings.checks
    .filter(({ at }) => at > stroke.at)
    .toSorted((a, b) => a.at - b.at);
  const lastNotYet = checks.findLast(({ finding }) => finding === 'not yet');
  const ready = checks.find(
    ({ finding, at }) => finding === 'ready' && at > (lastNotYet?.at ?? stroke.at),
  );
  if (lastNotYet === undefined && ready === undefined) return null;
  const tried = (check: { readonly at: Instant } | undefined): TriedAt | null =>
    check === undefined
      ? null
      : {
          minutes: (check.at - stroke.at) / minute,
          labelMinutes: air.labelTime(opening.span, stroke.at, check.at) / minute,
        };
  return {
    piece: piece.id,
    product: productKey(product),
    productName: product.name,
    milestone: opening.milestone,
    at: stroke.at,
    notYet: tried(lastNotYet),
    ready: tried(ready),
  };
}

/**
 * A coat that says nothing of others: told to be thin or heavy, one that showed trouble, or so late that somebody looked
 * for a reason and found one.
 */
function isOutlier(piece: Piece, step: string, part: string | null, pass: number): boolean {
  const weight = coatWeightOf(piece, step, part, pass);
  if (weight !== null && weight !== 'normal') return true;
  const ofCoat = piece.checks.filter(
    (check) => check.step === step && (part === null || countsFor(check.part, part)),
  );
  return ofCoat.some(
    ({ finding, fact }) =>
      finding === 'trouble' || piece.lateness.some(({ check }) => check === fact),
  );
}
