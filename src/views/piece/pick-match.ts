import { piecesOnBench, type Piece } from '../../tracker/bench/index.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { messageOf } from '../parts/message-lines.ts';
import { nextPage } from '../parts/pick-page.ts';
import type { BenchPort } from '../port.ts';
import type { Frame, Step, View } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import { askedOut } from './ask-piece.ts';

const listOf = (state: PieceState, piece: Piece, view: View): ListPage => {
  const others = piecesOnBench(view.snapshot.bench).filter(({ id }) => id !== piece.id);
  const matches = (id: string): boolean => piece.partners.some((each) => each.piece === id);
  return {
    title: `what should ${calledPiece(piece)} match?`,
    items: others.map((each) => ({
      value: each.id,
      label: `${calledPiece(each)}${matches(each.id) ? '   matches; again: no longer' : ''}`,
    })),
    from: state.from ?? 0,
    hints: [
      others.length === 0
        ? 'There is no other piece on the bench.'
        : 'Alike in products, coats and dwells: what differs is said while it can be mended.',
    ],
    keys: ['Enter or its number: tell it', 'Esc: leave it'],
  };
};

/** The pieces that a piece can match. */
export const drawMatches = (state: PieceState, piece: Piece, view: View): Frame =>
  listPage(listOf(state, piece, view), view);

export function pickMatch(
  state: PieceState,
  value: string,
  piece: Piece,
  view: View,
  port: BenchPort,
): Step<PieceState> {
  if (value === nextPage)
    return { state: { ...state, from: turnedPage(listOf(state, piece, view), view) } };
  const reply = port.act({ do: 'match pieces', piece: piece.id, partner: value });
  return { state: askedOut(state, view), message: messageOf(reply) };
}
