import { nearest } from '../../tracker/trade/index.ts';
import type { Press } from '../keys/press.ts';
import { messageOf } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { cursorBehind, fieldIn, withCursor } from '../parts/writing.ts';
import type { BenchPort } from '../port.ts';
import { refused, type ScreenModule, type Step, type View } from '../screen.ts';
import type { PastState } from '../screens.ts';
import { drawPast } from './draw-past.ts';
import { pastPieces, type FoundPiece } from './find-piece.ts';
import { piecesNamed } from './pieces-named.ts';

/** Pieces that have left the bench: found by name, opened as a job card, put back. */
export const pastScreen: ScreenModule<PastState> = {
  draw: (state, view) => drawPast(state, foundIn(state, view), allIn(state, view), view),

  load: async (state, port) =>
    state.past === null ? { ...state, past: await port.past() } : state,

  typing: ({ finding }) => finding === true,

  press: (state, press, view, port) => {
    const found = foundIn(state, view);
    const at = Math.max(0, Math.min(state.at, found.length - 1));
    const piece = found[at];
    const moved = movedTo(press.name, at, found.length);
    if (moved !== null) return { state: { ...state, at: moved, finding: false } };
    if (press.name === 'enter') return opened(state, piece, view);
    return state.finding === true ? writing(state, press) : listed(state, press, piece, port);
  },
};

const allIn = ({ past }: PastState, { snapshot }: View): readonly FoundPiece[] =>
  pastPieces(snapshot.bench, past);

const foundIn = (state: PastState, view: View): readonly FoundPiece[] =>
  piecesNamed(allIn(state, view), state.find);

function movedTo(name: string, at: number, length: number): number | null {
  const within = (next: number): number => Math.max(0, Math.min(length - 1, next));
  switch (name) {
    case 'up':
      return within(at - 1);
    case 'down':
      return within(at + 1);
    case 'page up':
      return within(at - 10);
    case 'page down':
      return within(at + 10);
    default:
      return null;
  }
}

/** While a name is written letters are text; Esc gives up the search, Tab keeps what was found. */
function writing(state: PastState, press: Press): Step<PastState> {
  if (press.name === 'escape')
    return { state: cursorBehind({ ...state, find: '', finding: false, at: 0 }) };
  if (press.name === 'tab') return { state: { ...state, finding: false } };
  const edited = editField(fieldIn(state.find, state), press);
  return edited === null
    ? {}
    : { state: withCursor({ ...state, find: edited.text, at: 0 }, edited) };
}

function listed(
  state: PastState,
  { name }: Press,
  found: FoundPiece | undefined,
  port: BenchPort,
): Step<PastState> {
  switch (name) {
    case 'escape':
      return state.find === '' ? { back: true } : { state: { ...state, find: '', at: 0 } };
    case 'f':
    case '/':
      return { state: cursorBehind({ ...state, finding: true }) };
    case 'home':
      return { state: { ...state, at: 0 } };
    case 'end':
      return { state: { ...state, at: Number.MAX_SAFE_INTEGER } };
    case 'm':
      return found === undefined
        ? {}
        : { state, open: { is: 'hours', piece: found.piece.id, at: 0, past: state.past } };
    case 'p':
      return found === undefined
        ? { message: refused('Not put back: no piece is marked.') }
        : { message: messageOf(port.act({ do: 'put back on bench', piece: found.piece.id })) };
    default:
      return {};
  }
}

function opened(state: PastState, found: FoundPiece | undefined, view: View): Step<PastState> {
  if (found !== undefined)
    return {
      state: { ...state, finding: false },
      open: { is: 'job card', piece: found.piece.id, from: 0, past: state.past },
    };
  const names = nearest(
    state.find,
    allIn(state, view).map(({ piece }) => piece.name),
  );
  const meant = names.length === 0 ? '' : ` Did you mean ${names.join(', ')}?`;
  return {
    message: refused(`Not opened: no past piece is called "${state.find.trim()}".${meant}`),
  };
}
