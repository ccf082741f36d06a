import type { Piece, PlannedStep } from '../../tracker/bench/index.ts';
import { listPage, turnedPage, type ListPage } from '../parts/list-page.ts';
import { messageOf } from '../parts/message-lines.ts';
import { nextPage } from '../parts/pick-page.ts';
import type { BenchPort } from '../port.ts';
import { said, type Frame, type Step, type View } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import { askedOut, insertedBefore } from './ask-piece.ts';
import { classItems, improvise, isStepClass } from './improvise.ts';
import { markedStep } from './marked-step.ts';

const listOf = (state: PieceState): ListPage => ({
  title: `insert ${(state.text ?? '').trim()}: what kind of work is it?`,
  items: classItems(state.text ?? ''),
  from: state.from ?? 0,
  hints: ['It takes minutes, product and windows from such a step of this piece, if there is one.'],
  keys: ['Enter or its number: put it in', 'Esc: back to its name'],
});

/** The list from which the class of a step that is being inserted is picked. */
export const drawClasses = (state: PieceState, view: View): Frame => listPage(listOf(state), view);

/** After whole sentences it is one of its own. */
const likeWords = (before: string, like: PlannedStep | null): string => {
  if (like === null) return '';
  return `${before.endsWith('.') ? '  Minutes' : '; minutes'} and windows as ${like.name}`;
};

export function pickClass(
  state: PieceState,
  value: string,
  piece: Piece,
  view: View,
  port: BenchPort,
): Step<PieceState> {
  if (value === nextPage) return { state: { ...state, from: turnedPage(listOf(state), view) } };
  if (!isStepClass(value)) return {};
  const before = insertedBefore(piece, markedStep(state, piece))?.id ?? null;
  const { step, like } = improvise(piece, (state.text ?? '').trim(), value, before);
  const reply = port.act({ do: 'insert step', piece: piece.id, step, before });
  // What is wrong with it is its name or its place: both are told, and the name is there to be changed.
  if (!reply.ok) return { state: { ...state, asks: 'insert' }, message: messageOf(reply) };
  return { state: askedOut(state, view), message: said(reply.says + likeWords(reply.says, like)) };
}
