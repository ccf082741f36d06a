import { sessionHolding, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import { stateAt, type Window } from '../../tracker/windows/index.ts';
import { lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { callWords, capital, whenInWords, windowWords } from '../format/index.ts';
import { page } from '../page.ts';
import { fewKeyHints, keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { Frame, View } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import { aboutStep } from './about-step.ts';
import { airLines } from './air-lines.ts';
import { cautionLines, cautionsOf } from './cautions.ts';
import { fitBlocks } from './fit-blocks.ts';
import { markedStep, stepToPickUp } from './marked-step.ts';
import { matchLines } from './match-lines.ts';
import { moistureLines } from './moisture-lines.ts';
import { opened, pieceOnBench } from './opened.ts';
import { pieceHead } from './piece-head.ts';
import { pieceHints } from './piece-keys.ts';
import { columnHeads, stepColumns, stepRow } from './step-row.ts';
import type { OpenedPiece } from './step-window.ts';
import { totalLine } from './total-line.ts';
import { blockWindow, labelled, windowBlock } from './window-block.ts';

const tenMinutes = 600_000;

/** On a low screen the steps are worth more than all the keys. */
const mostKeyLines = ({ rows }: View): number => Math.max(1, Math.floor(rows / 5));

/** One piece with its steps, and what is running on the marked one. */
export function drawPiece(state: PieceState, view: View): Frame {
  const piece = pieceOnBench(state, view);
  if (piece === null) {
    const told = wrapWords('That piece is not on the bench any more.', view.columns);
    return {
      lines: page(
        told.map((line) => lineOf(line)),
        keyHints(['Esc bench'], view.columns),
        view,
      ),
    };
  }
  const whole = opened(piece, view);
  const marked = markedStep(state, piece);
  const columns = stepColumns(view.columns, view.snapshot.shop);
  const [title = lineOf(''), known = lineOf('')] = pieceHead(piece, view);
  const window = marked === null ? whole.standing.window : blockWindow(whole, marked, view);
  const cautions = marked === null ? null : cautionsOf(piece, marked, view);
  const lines = fitBlocks(
    piece.steps.map((step) =>
      stepRow({ opened: whole, step, marked: step === marked, columns, view }),
    ),
    marked === null ? 0 : piece.steps.indexOf(marked),
    {
      title,
      known,
      heads: (told) => columnHeads(columns, `   step${told === '' ? '' : `, ${told}`}`),
      total: totalLine(whole, columns, view),
      window: window === null ? [] : windowBlock(whole, window, view),
      beside: [...matchLines(whole, window, view), ...moistureLines(piece, view)],
      caution:
        cautions === null || marked === null
          ? []
          : [...airLines(piece, marked, view), ...cautionLines(cautions, view)],
      isDeadly: cautions?.isDeadly === true && cautions.full.length > 0,
      note: [
        ...(marked === null ? [] : aboutStep(piece, marked, view.columns)),
        ...noteLines(piece, marked, view),
      ],
      foot: footLines(state, whole, view),
    },
    view.rows,
  );
  return { lines, ticking: window !== null && ticks(window, view) };
}

function ticks(window: Window, { now, snapshot }: View): boolean {
  const { counts, at } = windowWords(window, now, snapshot.shop);
  return counts === 'down' && at !== null && at - now <= tenMinutes;
}

/** The last note on the marked step, else on the piece. */
function noteLines(piece: Piece, marked: PlannedStep | null, view: View): readonly Line[] {
  const note =
    piece.notes.findLast(({ step }) => step !== null && step === marked?.id) ??
    piece.notes.findLast(({ step }) => step === null);
  if (note === undefined) return [];
  const when = whenInWords(note.at, view.now, view.snapshot.shop);
  return labelled('note', `${when}: ${note.text}`, view.columns).slice(0, 2);
}

/** What is to be tried or done, and what Enter does; or what the last key did. Below it the keys. */
function footLines(state: PieceState, whole: OpenedPiece, view: View): readonly Line[] {
  const told = messageLines(view);
  return [
    ...(told.length > 0 ? told : actLines(state, whole, view)),
    ...fewKeyHints(pieceHints(), view.columns, mostKeyLines(view)),
  ];
}

function actLines(
  state: PieceState,
  { bench, piece, standing }: OpenedPiece,
  view: View,
): readonly Line[] {
  const { window } = standing;
  const calls =
    window === null || stateAt(window, view.now) === 'done'
      ? ''
      : callWords(window, view.now, view.snapshot.shop);
  const step = stepToPickUp(state, piece);
  const held = sessionHolding(bench, piece.id);
  const isHeld =
    step !== null && held?.targets.some((each) => each.piece === piece.id && each.step === step.id);
  const enter =
    step === null
      ? 'Every step is done'
      : `Enter: ${isHeld === true ? 'put down' : 'pick up'} ${step.name}`;
  const sentences = [...(calls === '' ? [] : [`${capital(calls)}.`]), enter];
  return wrapWords(sentences.join('  '), view.columns)
    .slice(0, 2)
    .map((line) => lineOf(line, 'strong'));
}
