import {
  answerTo,
  leftOutWords,
  lockOn,
  lockWords,
  type Piece,
  type PlannedStep,
} from '../../tracker/bench/index.ts';
import type { Line } from '../drawing/index.ts';
import { labelled } from './window-block.ts';

/** What the piece makes of the marked step, in full, with what can be done about it. */
export function aboutStep(piece: Piece, step: PlannedStep, columns: number): readonly Line[] {
  if (step.leftOut === true)
    return labelled(
      'left out',
      `not for this piece (${leftOutWords(piece, step)}). x puts it in anyway.`,
      columns,
    );
  if (step.skipped) return [];
  const lock = lockOn(piece, step);
  const answer = answerTo(piece, step);
  return [
    ...(lock === null
      ? []
      : labelled('waits', `its trial first: ${lockWords(piece, lock)}.`, columns)),
    ...(step.asks === undefined
      ? []
      : labelled(
          'asks',
          `${step.asks.question} ${answer === null ? 'a answers.' : `${answer}. a: another answer.`}`,
          columns,
        )),
  ];
}
