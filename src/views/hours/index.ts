import { findPiece, type FoundPiece } from '../past-pieces/find-piece.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { drawAllPieces } from './all-pieces.ts';
import { drawCorrecting } from './correct-draw.ts';
import { pressCorrecting } from './correct-press.ts';
import { pressHours } from './hours-press.ts';
import { drawOnePiece } from './one-piece.ts';
import { reviewOfAll } from './review-memo.ts';

/** Actual against estimated minutes: of one piece, and over all that are finished. */
export const hoursScreen: ScreenModule<HoursState> = {
  draw: (state, view) => {
    const found = foundIn(state, view);
    const review = reviewOfAll(view.snapshot, view.now);
    if (found === null) return drawAllPieces(state, review, view);
    const { correcting } = state;
    return correcting === null || correcting === undefined
      ? drawOnePiece(state, found, review, view)
      : drawCorrecting(correcting, found, view);
  },

  load: (state, port) => {
    port.lookBack?.begin();
    return Promise.resolve(state);
  },

  closed: (port) => port.lookBack?.end(),

  typing: ({ correcting }) => correcting?.asks === 'start' || correcting?.asks === 'end',

  press: (state, press, view, port) => {
    const found = foundIn(state, view);
    const { correcting } = state;
    return found === null || correcting === null || correcting === undefined
      ? pressHours(state, press, found, reviewOfAll(view.snapshot, view.now), view, port)
      : pressCorrecting(state, correcting, press, found, view, port);
  },
};

/** The piece that is shown: on the bench, among past pieces that were loaded, or the one that was asked for. */
function foundIn({ piece, past }: HoursState, { snapshot }: View): FoundPiece | null {
  const found = snapshot.lookingBack?.found ?? null;
  const asked =
    found === null || found.piece !== piece ? null : { bench: found.bench, problems: [] };
  return findPiece(piece, snapshot.bench, past) ?? findPiece(piece, snapshot.bench, asked);
}
