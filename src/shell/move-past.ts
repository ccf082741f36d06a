import type { FactStore } from '../persist/index.ts';
import { factsOfPiece, foldBench } from '../tracker/bench/index.ts';
import { day, type Instant, type Milliseconds } from '../tracker/time/index.ts';
import { shopDay } from '../views/format/index.ts';

/** So long what left the bench can be brought back by a key, also after a restart. */
const staysFor: Milliseconds = day;

/**
 * Moves pieces that left the bench a day ago or more into the history of the year in which they left, so that a key
 * costs the same after ten years. Done at a start.
 */
export const movePastPieces = (store: FactStore, zone: string, now: Instant): void => {
  // Chosen under the lock: another screen may just be putting a piece back.
  store.moveToHistory(({ bench: facts }) =>
    [...foldBench(facts).pieces.values()].flatMap(({ id, place, leftAt }) =>
      place === 'bench' || leftAt === null || now - leftAt < staysFor
        ? []
        : [{ year: Number(shopDay(leftAt, zone).slice(0, 4)), ...factsOfPiece(facts, id) }],
    ),
  );
};
