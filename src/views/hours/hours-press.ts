import { piecesOnBench } from '../../tracker/bench/index.ts';
import type { Review } from '../../tracker/review/index.ts';
import type { Press } from '../keys/press.ts';
import { messageOf } from '../parts/message-lines.ts';
import type { FoundPiece } from '../past-pieces/find-piece.ts';
import type { BenchPort, LookingBack } from '../port.ts';
import { refused, type Step, type View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { tableOfPage } from './all-pieces.ts';
import { pickingSession } from './correct-act.ts';
import { pageAfter, pageBefore, pageOf, pieceTurnedTo } from './hours-pages.ts';
import { tableOf } from './one-piece.ts';
import { leaveOut } from './leave-out.ts';
import { doubted } from './session-words.ts';
import { takeBackOrForth } from './take-back.ts';

/** Keys of both tables; those of one piece need it, those of a correction are heard elsewhere. */
export function pressHours(
  state: HoursState,
  press: Press,
  found: FoundPiece | null,
  review: Review,
  view: View,
  port: BenchPort,
): Step<HoursState> {
  const length =
    found === null
      ? tableOfPage(state, review, view).rows.length
      : tableOf(state, found, view).rows.length;
  const moved = movedTo(press.name, Math.min(state.at, length - 1), length);
  if (moved !== null) return { state: { ...state, at: moved } };
  if (press.name === 'escape') return { back: true };
  if (press.name === 'tab' || press.name === 'right')
    return turnedTo(turned(state, 'on', view), port);
  if (press.name === 'left') return turnedTo(turned(state, 'back', view), port);
  if (/^[1-9]$/.test(press.name)) return toPiece(state, Number(press.name), view);
  const back = takeBackOrForth(press, port);
  if (back !== null) return back;
  if (found !== null) return onPiece(state, press, found, view, port);
  if (press.name === 'i')
    return { state, open: { is: 'import hours', text: '', looked: null, from: 0 } };
  const looking = press.name === 's' ? stopOrGoOn(state, view.snapshot.lookingBack, port) : null;
  if (looking !== null) return looking;
  const { pieces } = tableOfPage(state, review, view);
  const marked = pieces?.[Math.min(state.at, pieces.length - 1)];
  return marked === undefined ? onAllPieces(press) : onMarked(state, press, marked, view, port);
}

function movedTo(name: string, at: number, length: number): number | null {
  const within = (next: number): number => Math.max(0, Math.min(length - 1, next));
  switch (name) {
    case 'up':
      return within(at - 1);
    case 'down':
      return within(at + 1);
    case 'page up':
      return within(at - 8);
    case 'page down':
      return within(at + 8);
    case 'home':
      return 0;
    case 'end':
      return within(length - 1);
    default:
      return null;
  }
}

/** Tab: from one piece through the ways of looking at all of them, and round to the piece again, else to the first there is. */
function turned(state: HoursState, way: 'on' | 'back', { snapshot }: View): Step<HoursState> {
  if (state.piece !== null) {
    const to = way === 'on' ? 'classes' : 'where';
    return {
      state: { ...state, piece: null, last: state.piece, at: 0, page: to, correcting: null },
    };
  }
  const to = way === 'on' ? pageAfter(pageOf(state)) : pageBefore(pageOf(state));
  if (to !== null) return { state: { ...state, page: to, at: 0 } };
  const piece = pieceTurnedTo(state, snapshot);
  return piece === null
    ? { state: { ...state, page: way === 'on' ? 'classes' : 'where', at: 0 } }
    : { state: { ...state, piece, at: 0 } };
}

/** The page of the back-test begins it. */
function turnedTo(step: Step<HoursState>, { lookBack }: BenchPort): Step<HoursState> {
  if (step.state?.piece === null && pageOf(step.state) === 'back-test') lookBack?.backTest();
  return step;
}

/** s stops looking back where it runs, and begins it again where it was stopped or failed. */
function stopOrGoOn(
  state: HoursState,
  looking: LookingBack | undefined,
  { lookBack }: BenchPort,
): Step<HoursState> | null {
  if (looking === undefined || lookBack === undefined || looking.is === 'waiting') return null;
  if (looking.is === 'reading' || looking.is === 'trying') {
    lookBack.stop();
    return { state };
  }
  lookBack.begin();
  if (pageOf(state) === 'back-test') lookBack.backTest();
  return { state };
}

function toPiece(state: HoursState, number: number, { snapshot }: View): Step<HoursState> {
  const piece = piecesOnBench(snapshot.bench).find((each) => each.number === number);
  return piece === undefined
    ? { message: refused(`Not shown: no piece has number ${number}.`) }
    : { state: { ...state, piece: piece.id, at: 0, correcting: null } };
}

/** On a row that is a piece: Enter opens its hours. */
function onMarked(
  state: HoursState,
  press: Press,
  piece: string,
  view: View,
  port: BenchPort,
): Step<HoursState> {
  if (press.name === 'enter') {
    if (!view.snapshot.bench.pieces.has(piece)) port.lookBack?.find(piece);
    return { state: { ...state, piece, at: 0 } };
  }
  return press.name === 'x' ? leaveOut(state, piece, view, port) : onAllPieces(press);
}

const onAllPieces = ({ name }: Press): Step<HoursState> =>
  name === 'w' || name === 'j' || name === 's' || name === 'x'
    ? {
        message: refused(
          'Not here: that is about one piece. Press its number, or Tab till it shows.',
        ),
      }
    : {};

function onPiece(
  state: HoursState,
  { name }: Press,
  found: FoundPiece,
  view: View,
  port: BenchPort,
): Step<HoursState> {
  const { piece, bench, inHistory } = found;
  switch (name) {
    case 's':
      return { state: { ...state, by: state.by === 'step' ? 'class' : 'step', at: 0 } };
    case 'j':
      return {
        state,
        open: {
          is: 'job card',
          piece: piece.id,
          from: 0,
          past: inHistory ? { bench, problems: [] } : state.past,
        },
      };
    case 'w':
      return inHistory
        ? {
            message: refused(
              `Not corrected: ${piece.name} has gone to history. Put it back on the bench first.`,
            ),
          }
        : { state: { ...state, correcting: pickingSession } };
    case 'x':
      return leaveOut(state, piece.id, view, port);
    case 'y':
    case 'n':
      return inHistory ? {} : answer(name, found, view, port);
    default:
      return {};
  }
}

/** To the question whether a session was left running. "It is right" is kept too, so that it isn't asked again. */
function answer(
  key: 'y' | 'n',
  { bench, piece }: FoundPiece,
  { now }: View,
  port: BenchPort,
): Step<HoursState> {
  const [doubt] = doubted(bench, piece, now);
  if (doubt === undefined) return {};
  const { session, trimTo } = doubt;
  if (key === 'y' && trimTo === null)
    return { message: refused('Not trimmed: no key tells when it ended. w: correct it.') };
  if (key === 'n' && session.end === null)
    return { message: refused('Not noted: it is in hand still. Put it down first.') };
  const end = key === 'y' ? trimTo : session.end;
  return end === null
    ? {}
    : { message: messageOf(port.act({ do: 'correct session', session: session.id, end })) };
}
