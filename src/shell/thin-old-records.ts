import type { FactStore } from '../persist/index.ts';
import { foldBench, needlessOfOld, needlessPings, piecesOnBench } from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';

/**
 * Leaves out readings of long ago that tell next to nothing and on which no piece of the bench hangs, and pings of long
 * ago about nothing that is still there. Done at a start.
 */
export function thinOldRecords(store: FactStore, now: Instant): void {
  store.change(({ bench: facts, conditions, pings }) => {
    const bench = foldBench(facts);
    const neededFrom = Math.min(
      now,
      ...piecesOnBench(bench).flatMap(({ addedAt, stamps }) => [
        addedAt,
        ...stamps.map(({ at }) => at),
      ]),
    );
    const needless = new Set([
      ...needlessOfOld(conditions, now, neededFrom),
      ...needlessPings(pings, bench, now),
    ]);
    return { append: { needless }, result: null };
  });
}
