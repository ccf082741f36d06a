import type { Piece } from '../../tracker/bench/index.ts';

/** `3 Beech stool`, or the name alone once it has left the bench. */
export const calledPiece = ({ number, name }: Pick<Piece, 'number' | 'name'>): string =>
  number === null ? name : `${number} ${name}`;
