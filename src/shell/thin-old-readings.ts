import type { FactStore } from '../persist/index.ts';
import { foldBench, needlessOfOld, piecesOnBench } from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';

/** Leaves out readings of long ago that tell next to nothing and on which no piece of the bench hangs. Done at a start. */
export function thinOldReadings(store: FactStore, now: Instant): void {
  store.change(({ bench, conditions }) => {
    const pieces = piecesOnBench(foldBench(bench));
    const neededFrom = Math.min(
      now,
      ...pieces.flatMap(({ addedAt, stamps }) => [addedAt, ...stamps.map(({ at }) => at)]),
    );
    return {
      append: { needlessReadings: needlessOfOld(conditions, now, neededFrom) },
      result: null,
    };
  });
}
