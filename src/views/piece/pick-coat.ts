import {
  coatToWeigh,
  coatWeightOf,
  coatWeights,
  passCalled,
  passToWeigh,
  type CoatWeight,
  type Piece,
} from '../../tracker/bench/index.ts';
import { listPage, type ListPage } from '../parts/list-page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { messageOf } from '../parts/message-lines.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Frame, type Step, type View } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import { askedOut } from './ask-piece.ts';
import { markedStep } from './marked-step.ts';

/** Asks how heavy the marked coat went on, or the last one that is on. */
export function askCoat(state: PieceState, piece: Piece): Step<PieceState> {
  if (coatToWeigh(piece, markedStep(state, piece)?.id ?? null) === null)
    return { state, message: refused(`Not noted: no coat is on ${calledPiece(piece)} yet.`) };
  const { cursor: _, ...rest } = state;
  return { state: { ...rest, asks: 'coat' } };
}

const words: Readonly<Record<CoatWeight, string>> = {
  thin: 'thin      wiped, or pulled out far',
  normal: 'normal    as the label means it',
  heavy: 'heavy     laid on thick: dries slower',
};

function listOf(state: PieceState, piece: Piece): ListPage {
  const coat = coatToWeigh(piece, markedStep(state, piece)?.id ?? null);
  const so = coat === null ? null : coatWeightOf(piece, coat.id, null, passToWeigh(piece, coat));
  const pass =
    coat !== null && (coat.passes ?? 1) > 1
      ? `, ${passCalled(coat, passToWeigh(piece, coat))}`
      : '';
  return {
    title: `how heavy did it go on? ${calledPiece(piece)}, ${coat?.name ?? 'no coat'}${pass}`,
    items: coatWeights.map((weight) => ({
      value: weight,
      label: words[weight] + (weight === so ? '   so far' : ''),
    })),
    from: 0,
    hints: [
      'It stands on the job card. The window keeps to its figures,',
      'and neither heavy nor thin teaches how long the product dries.',
    ],
    keys: ['Enter or its number: note it', 'Esc: leave it'],
  };
}

export const drawCoats = (state: PieceState, piece: Piece, view: View): Frame =>
  listPage(listOf(state, piece), view);

export function pickCoat(
  state: PieceState,
  value: string,
  piece: Piece,
  view: View,
  port: BenchPort,
): Step<PieceState> {
  const weight = coatWeights.find((each) => each === value);
  const coat = coatToWeigh(piece, markedStep(state, piece)?.id ?? null);
  if (weight === undefined || coat === null) return {};
  const reply = port.act({
    do: 'tell coat weight',
    piece: piece.id,
    part: null,
    step: coat.id,
    weight,
  });
  return { state: askedOut(state, view), message: messageOf(reply) };
}
