import { jobCard } from '../../tracker/bench/index.ts';
import { lineOf } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { page, scrolledBy, scrolledPage, type ScrolledPage } from '../page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import { findPiece, type FoundPiece } from '../past-pieces/find-piece.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { JobCardState } from '../screens.ts';
import { cardLines } from './card-lines.ts';

/** A piece's whole record on one sheet, of a piece on the bench or of one that has left it. */
export const jobCardScreen: ScreenModule<JobCardState> = {
  draw: (state, view) => {
    const found = findPiece(state.piece, view.snapshot.bench, state.past);
    if (found !== null) return { lines: scrolledPage(sheet(state, found, view), view) };
    const says = state.past === null ? 'Reading past years.' : 'There is no such piece any more.';
    const body = [...heading(lineOf('job card', 'strong'), view), lineOf(says)];
    return { lines: page(body, footOf(state, view), view) };
  },

  load: async (state, port) =>
    state.past === null && !port.snapshot().bench.pieces.has(state.piece)
      ? { ...state, past: await port.past() }
      : state,

  press: (state, press, view) => {
    if (press.name === 'escape') return { back: true };
    const found = findPiece(state.piece, view.snapshot.bench, state.past);
    if (found === null) return {};
    if (press.name === 'm')
      return { state, open: { is: 'hours', piece: state.piece, at: 0, past: state.past } };
    const from = scrolledBy(press, sheet(state, found, view), view);
    return from === null ? {} : { state: { ...state, from } };
  },
};

function sheet(state: JobCardState, { bench, piece }: FoundPiece, view: View): ScrolledPage {
  const { snapshot, now, columns } = view;
  const card = jobCard(bench, piece, now, snapshot.sense);
  const [title = lineOf(''), ...body] = cardLines(card, now, snapshot.shop, columns);
  const [head = lineOf(''), loud = lineOf('')] = heading(title, view);
  const isCalling = loud[0]?.role === 'loud';
  return {
    head: [head, ...(isCalling ? [loud] : [])],
    body,
    foot: footOf(state, view),
    from: state.from,
  };
}

function footOf({ past }: JobCardState, view: View): ScrolledPage['foot'] {
  const { columns } = view;
  const problems = (past?.problems ?? []).flatMap((problem) => wrapWords(problem, columns));
  return [
    ...problems.slice(0, 2).map((text) => lineOf(text, 'refusal')),
    ...messageLines(view),
    ...keyHints(['up, down', 'm hours', 'Esc back'], columns, 3),
  ];
}
