import type { FoundPiece } from './find-piece.ts';

/** Pieces in whose name every word that was written occurs, in any order and in either case. */
export function piecesNamed(pieces: readonly FoundPiece[], find: string): readonly FoundPiece[] {
  const words = folded(find).split(/\s+/).filter(Boolean);
  return pieces.filter(({ piece }) => words.every((word) => folded(piece.name).includes(word)));
}

/** Accents and case don't count: "etagere" finds "Étagère". */
const folded = (text: string): string =>
  text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();
