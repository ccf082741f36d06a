import type { Piece } from '../../tracker/bench/index.ts';
import { lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import type { Press } from '../keys/press.ts';
import { scrolledBy, scrolledPage, type ScrolledPage } from '../page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import type { Frame, Step, View } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import { cautionsOf } from './cautions.ts';
import { markedStep } from './marked-step.ts';
import { pieceAct } from './piece-keys.ts';

/** Every caution of the marked step in full, whatever was said before. */
function cautionsPage(state: PieceState, piece: Piece, view: View): ScrolledPage {
  const { columns } = view;
  const step = markedStep(state, piece);
  const all = step === null ? [] : cautionsOf(piece, step, view).all;
  const product = step?.product === undefined ? undefined : piece.products[step.product];
  const titles = wrapWords(
    ['cautions: ' + calledPiece(piece), step?.name ?? '', product?.name ?? '']
      .filter((part) => part !== '')
      .join(', '),
    columns,
  ).map((line) => lineOf(line, 'strong'));
  const [title = lineOf(''), ...rest] = titles;
  const [first = lineOf(''), loud = lineOf('')] = heading(title, view);
  const body = all.flatMap((text): readonly Line[] => [
    ...wrapWords(text, columns).map((line) => lineOf(line)),
    lineOf(''),
  ]);
  return {
    head: [first, ...rest, loud],
    body:
      body.length === 0 ? [lineOf('None is written for this step. The label comes first.')] : body,
    foot: keyHints(
      ['Label, local codes and licensed practice come first.', 'Esc: back to the piece'],
      columns,
      3,
    ),
    from: state.from ?? 0,
  };
}

export const drawCautions = (state: PieceState, piece: Piece, view: View): Frame => ({
  lines: scrolledPage(cautionsPage(state, piece, view), view),
});

export function pressCautions(
  state: PieceState,
  press: Press,
  piece: Piece,
  view: View,
): Step<PieceState> {
  const act = pieceAct(press.name);
  if (act === 'back' || act === 'cautions') {
    const { shows: _shows, from: _from, ...closed } = state;
    return { state: closed };
  }
  const from = scrolledBy(press, cautionsPage(state, piece, view), view);
  return from === null ? {} : { state: { ...state, from } };
}
