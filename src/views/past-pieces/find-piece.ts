import type { Bench, Piece } from '../../tracker/bench/index.ts';
import type { PastPieces } from '../screens.ts';

/** A piece and the bench whose sessions and facts go with it. */
export type FoundPiece = {
  readonly piece: Piece;
  readonly bench: Bench;
  /** It lies in the history of a year, not in the bench file: nothing can be recorded on it until it is put back. */
  readonly inHistory: boolean;
};

/** A piece by its id, wherever it is; what the bench file says of it comes first. */
export function findPiece(
  id: string | null,
  bench: Bench,
  past: PastPieces | null,
): FoundPiece | null {
  if (id === null) return null;
  const here = bench.pieces.get(id);
  if (here !== undefined) return { piece: here, bench, inHistory: false };
  const before = past?.bench.pieces.get(id);
  return past === null || before === undefined
    ? null
    : { piece: before, bench: past.bench, inHistory: true };
}

/** Pieces that have left the bench, each once, the last that left first. Removed ones stay hidden. */
export function pastPieces(bench: Bench, past: PastPieces | null): readonly FoundPiece[] {
  const ids = new Set([...bench.pieces.keys(), ...(past?.bench.pieces.keys() ?? [])]);
  return [...ids]
    .map((id) => findPiece(id, bench, past))
    .filter((found) => found?.piece.place === 'past')
    .filter((found) => found !== null)
    .sort((a, b) => (b.piece.leftAt ?? 0) - (a.piece.leftAt ?? 0));
}
