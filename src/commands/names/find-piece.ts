import { piecesOnBench, type Bench, type Part, type Piece } from '../../tracker/bench/index.ts';
import type { Failure } from '../line/command.ts';
import { findNamed, type Named } from './match.ts';

/** `3 Beech stool`, or the name alone once it has left the bench. */
export const pieceCalled = ({ number, name }: Pick<Piece, 'number' | 'name'>): string =>
  number === null ? name : `${number} ${name}`;

/** A piece by its number, its name or the beginning of its name; by its id for programs. */
export const namedPiece = (piece: Piece): Named<Piece> => ({
  thing: piece,
  called: pieceCalled(piece),
  names: [
    piece.name,
    piece.id,
    pieceCalled(piece),
    ...(piece.number === null ? [] : [String(piece.number)]),
  ],
  name: piece.name,
});

/** Finds a piece on the bench. */
export function findOnBench(typed: string, bench: Bench, not: string): Piece | Failure {
  return findNamed(typed, piecesOnBench(bench).map(namedPiece), { not, what: 'piece' });
}

/** Finds a part of a piece; null for the whole piece. */
export function findPart(typed: string | null, piece: Piece, not: string): Part | null | Failure {
  if (typed === null) return null;
  return findNamed(
    typed,
    piece.parts.map((part) => ({
      thing: part,
      called: part.name,
      names: [part.name, part.id],
      name: part.name,
    })),
    { not, what: 'part', whose: pieceCalled(piece) },
  );
}
