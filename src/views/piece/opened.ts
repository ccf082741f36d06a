import { standingOf, windowsOf, type Piece } from '../../tracker/bench/index.ts';
import { hoursOfPiece } from '../../tracker/estimate/index.ts';
import type { View } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import type { OpenedPiece } from './step-window.ts';

/** The piece that is opened, while it is on the bench. */
export const pieceOnBench = ({ piece: id }: PieceState, { snapshot }: View): Piece | null => {
  const piece = snapshot.bench.pieces.get(id);
  return piece?.place === 'bench' ? piece : null;
};

export function opened(piece: Piece, { now, snapshot }: View): OpenedPiece {
  const { bench, sense } = snapshot;
  return {
    bench,
    piece,
    windows: windowsOf(bench, piece, sense),
    standing: standingOf(bench, piece, now, sense),
    hours: hoursOfPiece(bench, piece, now),
  };
}
