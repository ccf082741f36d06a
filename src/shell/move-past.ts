import type { FactStore } from '../persist/index.ts';
import { factsOfPiece, foldBench } from '../tracker/bench/index.ts';
import { shopDay } from '../views/format/index.ts';

/**
 * Moves pieces that have left the bench into the history of the year in which they left, so that a key costs the same
 * after ten years. Done at a start, never while the piece could still be brought back by a key.
 */
export const movePastPieces = (store: FactStore, zone: string): void => {
  // Chosen under the lock: another screen may just be putting a piece back.
  store.moveToHistory(({ bench: facts }) =>
    [...foldBench(facts).pieces.values()].flatMap(({ id, place, leftAt }) =>
      place === 'bench' || leftAt === null
        ? []
        : [{ year: Number(shopDay(leftAt, zone).slice(0, 4)), ...factsOfPiece(facts, id) }],
    ),
  );
};
