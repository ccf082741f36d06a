import type { FinishedHours } from '../../tracker/estimate/index.ts';
import { findPiece } from '../past-pieces/find-piece.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { drawAllPieces } from './all-pieces.ts';
import { drawCorrecting } from './correct-draw.ts';
import { pressCorrecting } from './correct-press.ts';
import { finishedHours } from './finished-memo.ts';
import { pressHours } from './hours-press.ts';
import { drawOnePiece } from './one-piece.ts';

/** Actual against estimated minutes: of one piece, and over all that are finished. */
export const hoursScreen: ScreenModule<HoursState> = {
  draw: (state, view) => {
    const found = findPiece(state.piece, view.snapshot.bench, state.past);
    if (found === null) return drawAllPieces(state, finishedOf(state, view), view);
    const { correcting } = state;
    return correcting === null || correcting === undefined
      ? drawOnePiece(state, found, finishedOf(state, view), view)
      : drawCorrecting(correcting, found, view);
  },

  load: async (state, port) =>
    state.past === null ? { ...state, past: await port.past() } : state,

  typing: ({ correcting }) => correcting?.asks === 'start' || correcting?.asks === 'end',

  press: (state, press, view, port) => {
    const found = findPiece(state.piece, view.snapshot.bench, state.past);
    const { correcting } = state;
    return found === null || correcting === null || correcting === undefined
      ? pressHours(state, press, found, finishedOf(state, view), view, port)
      : pressCorrecting(state, correcting, press, found, view, port);
  },
};

const finishedOf = ({ past }: HoursState, { snapshot, now }: View): FinishedHours =>
  finishedHours(snapshot.bench, past, now);
