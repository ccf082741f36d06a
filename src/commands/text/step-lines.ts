import { currentStep, type Piece } from '../../tracker/bench/index.ts';
import { opened } from '../../views/piece/opened.ts';
import { pieceHead } from '../../views/piece/piece-head.ts';
import { columnHeads, stepColumns, stepRow } from '../../views/piece/step-row.ts';
import { totalLine } from '../../views/piece/total-line.ts';
import type { Look } from '../line/look.ts';
import { plainLines, textView } from './text-view.ts';

/** A piece, what is known of it, and its steps; the one that is next is marked; and what was spent and is to go. */
export function stepLines(piece: Piece, look: Look): readonly string[] {
  const view = textView(look);
  const columns = stepColumns(view.columns, view.snapshot.shop);
  const next = currentStep(piece, null);
  const whole = opened(piece, view);
  return plainLines([
    ...pieceHead(piece, view),
    columnHeads(columns, ''),
    ...piece.steps.map((step) =>
      stepRow({ opened: whole, step, marked: step === next, columns, view }),
    ),
    totalLine(whole, columns, view),
  ]);
}
