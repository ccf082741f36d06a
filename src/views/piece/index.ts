import type { ScreenModule } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import { drawAsking } from './ask-piece.ts';
import { drawCautions } from './cautions-page.ts';
import { drawPiece } from './draw-piece.ts';
import { pieceOnBench } from './opened.ts';
import { drawClasses, pickClass } from './pick-class.ts';
import { drawCoats, pickCoat } from './pick-coat.ts';
import { drawMatches, pickMatch } from './pick-match.ts';
import { pressPiece } from './press-piece.ts';

export const pieceScreen: ScreenModule<PieceState> = {
  draw: (state, view) => {
    const piece = pieceOnBench(state, view);
    if (piece === null) return drawPiece(state, view);
    if (state.asks === 'class') return drawClasses(state, view);
    if (state.asks === 'match') return drawMatches(state, piece, view);
    if (state.asks === 'coat') return drawCoats(state, piece, view);
    if (state.asks !== undefined) return drawAsking(state.asks, state, piece, view);
    return state.shows === 'cautions' ? drawCautions(state, piece, view) : drawPiece(state, view);
  },

  press: pressPiece,

  // A glove that leans on the keys, or a paste, changes no piece.
  many: (state) => ({ state }),

  picked: (state, value, view, port) => {
    const piece = pieceOnBench(state, view);
    if (piece === null) return {};
    if (state.asks === 'class') return pickClass(state, value, piece, view, port);
    if (state.asks === 'coat') return pickCoat(state, value, piece, view, port);
    return state.asks === 'match' ? pickMatch(state, value, piece, view, port) : {};
  },

  typing: ({ asks }) => asks !== undefined && !['class', 'match', 'coat'].includes(asks),
};

export { pieceKeys } from './piece-keys.ts';
