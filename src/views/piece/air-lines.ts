import { airWarnings, isDone, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import type { Line } from '../drawing/index.ts';
import { airWarningWords } from '../format/index.ts';
import type { View } from '../screen.ts';
import { labelled } from './window-block.ts';

/** What the air says against putting the coat of a step on now, a sentence each; nothing once it is done. */
export function airLines(piece: Piece, step: PlannedStep, view: View): readonly Line[] {
  if (isDone(piece, step.id, null)) return [];
  const { readings, shop } = view.snapshot;
  return airWarnings(piece, step, readings, view.now).flatMap((warning) =>
    labelled('air', airWarningWords(warning, view.now, shop), view.columns, 'strong'),
  );
}
