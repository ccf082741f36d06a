import {
  finishedAt,
  leanOf,
  type FinishedHours,
  type Lean,
  type PieceHours,
} from '../estimate/index.ts';
import type { Instant } from '../time/index.ts';
import { trendOf, type Trend } from './trend.ts';

/** How the pieces of one month, or the last ones, went. */
export type TimeLean = Lean & { readonly name: string };

export type OverTime = {
  /** The last pieces; null where that would be all. */
  readonly last: (Lean & { readonly count: number }) | null;
  /** The newest first. `name` is what `monthOf` gave. */
  readonly months: readonly TimeLean[];
  /** Over all pieces in the order in which they were finished; null for too few. */
  readonly trend: Trend | null;
};

/** So many pieces are "the last ones". */
const lastPieces = 5;

/**
 * Whether this person's minutes drift against the estimates that they were given.
 * @param monthOf the month of an instant in the shop's zone, as `2026-11`
 */
export function overTime(
  { pieces, whole }: Pick<FinishedHours, 'pieces' | 'whole'>,
  monthOf: (at: Instant) => string,
): OverTime {
  const stepsOf = Map.groupBy(whole.steps, ({ piece }) => piece.id);
  const timed = pieces
    .filter(({ piece }) => stepsOf.has(piece.id))
    .toSorted((a, b) => finishedAt(a.piece) - finishedAt(b.piece));
  const lean = (some: readonly PieceHours[]): Lean =>
    leanOf(some.flatMap(({ piece }) => stepsOf.get(piece.id) ?? []));
  const months = Map.groupBy(timed, ({ piece }) => monthOf(finishedAt(piece)));
  return {
    last:
      timed.length <= lastPieces ? null : { ...lean(timed.slice(-lastPieces)), count: lastPieces },
    months: [...months].reverse().map(([name, own]) => ({ name, ...lean(own) })),
    trend: trendOf(timed.flatMap((each) => lean([each]).ratio ?? [])),
  };
}
