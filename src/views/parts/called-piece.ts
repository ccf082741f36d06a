import type { Piece } from '../../tracker/bench/index.ts';

/** `3 Beech stool`, or the name alone once it has left the bench. */
export const calledPiece = ({ number, name }: Pick<Piece, 'number' | 'name'>): string =>
  number === null ? name : `${number} ${name}`;

/** `1 Wall cabinet, left door`: with the part that something is about; the whole piece alone. */
export function calledPart(
  piece: Pick<Piece, 'number' | 'name' | 'parts'>,
  part: string | null,
): string {
  const name = piece.parts.find(({ id }) => id === part)?.name;
  return name === undefined ? calledPiece(piece) : `${calledPiece(piece)}, ${name}`;
}
