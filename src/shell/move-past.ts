import type { FactStore } from '../persist/index.ts';
import { factsOfPiece, foldBench } from '../tracker/bench/index.ts';
import { shopDay } from '../views/format/index.ts';

/**
 * Moves pieces that have left the bench into the history of the year in which they left, so that a key costs the same
 * after ten years. Done at a start, never while the piece could still be brought back by a key.
 */
export function movePastPieces(store: FactStore, zone: string): void {
  const loaded = store.load();
  if (!loaded.ok) return;
  const bench = foldBench(loaded.value.bench);
  const leaving = [...bench.pieces.values()].filter(
    ({ place, leftAt }) => place !== 'bench' && leftAt !== null,
  );
  if (leaving.length === 0) return;
  store.moveToHistory(
    leaving.map((piece) => ({
      year: Number(shopDay(piece.leftAt ?? 0, zone).slice(0, 4)),
      ...factsOfPiece(loaded.value.bench, piece.id),
    })),
  );
}
