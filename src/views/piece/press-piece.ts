import {
  askingSteps,
  questionOpen,
  sessionHolding,
  type Intent,
  type Piece,
} from '../../tracker/bench/index.ts';
import type { Instant, Milliseconds } from '../../tracker/time/index.ts';
import { freshGuard, judge, type Guard } from '../keys/guard.ts';
import type { Press } from '../keys/press.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { messageOf } from '../parts/message-lines.ts';
import { pressOnLocked } from '../parts/second-press.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Step, type View } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import { askWhich } from '../which-to-put-down/ask-which.ts';
import { answer, ask, askedOut } from './ask-piece.ts';
import { pressCautions } from './cautions-page.ts';
import { markAfter, markedStep, stepToPickUp } from './marked-step.ts';
import { pieceOnBench } from './opened.ts';
import { askCoat } from './pick-coat.ts';
import { pieceAct, type PieceAct } from './piece-keys.ts';

type PieceStep = Step<PieceState>;

/** What one key does on an opened piece. */
export function pressPiece(
  state: PieceState,
  press: Press,
  view: View,
  port: BenchPort,
): PieceStep {
  const piece = pieceOnBench(state, view);
  if (piece === null) return pieceAct(press.name) === 'back' ? { back: true } : {};
  if (state.asks !== undefined) return pressAsking(state, press, piece, view, port);
  if (state.shows !== undefined) return pressCautions(state, press, piece, view);
  const mark = markAfter(press.name, state, piece);
  if (mark !== null) return { state: { ...state, at: mark, guard: between(state, press, view) } };
  const act = pieceAct(press.name);
  if (act === null) return {};
  if (act === 'back') return { back: true, select: piece.id };
  const before = state.guard ?? freshGuard;
  const verdict = judge(before, press.name, view.now);
  const settled: PieceState = { ...state, guard: verdict.guard };
  if (!verdict.take || bounces(act, press, before, view.now))
    return {
      state: { ...state, guard: { ...verdict.guard, lastTaken: before.lastTaken } },
      heldBack: true,
    };
  return perform(act, settled, piece, view, port);
}

/** The same key twice within this time is one press; a step that is moved several places is not. */
const bounce: Milliseconds = 1000;

const bounces = (act: PieceAct, { name }: Press, { lastTaken }: Guard, now: Instant): boolean =>
  act !== 'earlier' &&
  act !== 'later' &&
  lastTaken?.name === name &&
  now >= lastTaken.at &&
  now - lastTaken.at < bounce;

/** A key between two alike tells them from a bounce: mark, skip, mark, skip goes as fast as fingers do. */
const between = ({ guard = freshGuard }: PieceState, { name }: Press, { now }: View): Guard =>
  guard.held ? guard : { ...guard, lastTaken: { name, at: now } };

function pressAsking(
  state: PieceState,
  press: Press,
  piece: Piece,
  view: View,
  port: BenchPort,
): PieceStep {
  const { asks } = state;
  if (asks === undefined) return {};
  if (asks === 'class')
    return press.name === 'escape' ? { state: { ...state, asks: 'insert' } } : {};
  if (press.name === 'escape') return { state: askedOut(state, view) };
  if (asks === 'match' || asks === 'coat') return {};
  if (press.name === 'enter') return answer(asks, state, piece, view, port);
  const edited = editField(fieldIn(state.text ?? '', state), press);
  return edited === null ? {} : { state: withCursor({ ...state, text: edited.text }, edited) };
}

function perform(
  act: Exclude<PieceAct, 'back'>,
  state: PieceState,
  piece: Piece,
  view: View,
  port: BenchPort,
): PieceStep {
  const step = markedStep(state, piece);
  const told = (intent: Intent): PieceStep => ({ state, message: messageOf(port.act(intent)) });
  switch (act) {
    case 'pick up':
      return pickUp(state, piece, view, port);
    case 'insert':
      return { state: ask(state, 'insert', piece, view) };
    case 'parts':
      return { state: ask(state, 'parts', piece, view) };
    case 'describe':
      return { state: ask(state, 'describe', piece, view) };
    case 'moisture':
      return { state: ask(state, 'moisture', piece, view) };
    case 'match': {
      const { cursor: _, ...rest } = state;
      return { state: { ...rest, asks: 'match', from: 0 } };
    }
    case 'coat':
      return askCoat(state, piece);
    case 'note':
      return { state, open: { is: 'note', piece: piece.id, step: state.at, text: '' } };
    case 'answer': {
      const asks = askingSteps(piece).find(({ id }) => id === step?.id) ?? questionOpen(piece);
      if (asks === null)
        return {
          state,
          message: refused(`Not answered: no step of ${calledPiece(piece)} asks anything.`),
        };
      return { state, open: { is: 'question', piece: piece.id, step: asks.id } };
    }
    case 'job card':
      return { state, open: { is: 'job card', piece: piece.id, from: 0, past: null } };
    case 'off the bench':
      return { state, open: { is: 'confirm', asks: 'take off bench', piece: piece.id } };
    case 'carried in':
      return told({ do: 'carry in', piece: piece.id });
    case 'cautions':
      return { state: { ...state, shows: 'cautions', from: 0 } };
    case 'product':
    case 'reword':
    case 'repeat':
    case 'skip':
    case 'earlier':
    case 'later':
      if (step === null)
        return {
          state,
          message: refused(`Not done: ${calledPiece(piece)} has no steps. i inserts one.`),
        };
      break;
  }
  // The marked step is named from now on: what changes around it doesn't move the mark.
  const marked: PieceState = { ...state, at: step.id };
  if (act === 'product')
    return {
      state: marked,
      open: { is: 'use product', piece: piece.id, step: step.id, products: null },
    };
  if (act === 'reword') return { state: ask(marked, 'reword', piece, view) };
  if (act === 'repeat') return told({ do: 'repeat step', piece: piece.id, step: step.id });
  if (act === 'skip')
    return {
      ...told({ do: 'skip step', piece: piece.id, step: step.id, skipped: !step.skipped }),
      state: marked,
    };
  return { ...moveStep(act, step.id, piece, port), state: marked };
}

/** Moves the marked step past its neighbour. */
function moveStep(
  act: 'earlier' | 'later',
  step: string,
  piece: Piece,
  port: BenchPort,
): PieceStep {
  const { steps } = piece;
  const at = steps.findIndex(({ id }) => id === step);
  const name = steps[at]?.name ?? '';
  const neighbour = steps[act === 'earlier' ? at - 1 : at + 1];
  if (neighbour === undefined)
    return {
      message: refused(`Not moved: ${name} is the ${act === 'earlier' ? 'first' : 'last'}.`),
    };
  const before = act === 'earlier' ? neighbour.id : (steps[at + 2]?.id ?? null);
  return { message: messageOf(port.act({ do: 'move step', piece: piece.id, step, before })) };
}

/** Takes the step in hand and goes to the bench, where its keys are; or puts it down. */
function pickUp(state: PieceState, piece: Piece, view: View, port: BenchPort): PieceStep {
  const step = stepToPickUp(state, piece);
  if (step === null) {
    const says = `Not picked up: every step of ${calledPiece(piece)} is done. e repeats one, i inserts one.`;
    return { state, message: refused(says) };
  }
  const held = sessionHolding(view.snapshot.bench, piece.id);
  if (held?.targets.some((target) => target.piece === piece.id && target.step === step.id) === true)
    return { state, message: messageOf(port.act({ do: 'put down', piece: piece.id })) };
  const locked = pressOnLocked(piece, null, step, state.refused, view.now);
  if (locked !== null && 'open' in locked) return { state, open: locked.open };
  const intent: Intent = {
    do: 'pick up',
    targets: [{ piece: piece.id, part: null, step: step.id }],
  };
  const reply = port.act(intent);
  const which = askWhich(intent, reply, view.now);
  if (which !== null) return { state, open: which };
  const message = messageOf(reply);
  if (locked !== null) return { state: { ...state, refused: locked.remember }, message };
  return reply.ok ? { back: 'bench', select: piece.id, message } : { state, message };
}
