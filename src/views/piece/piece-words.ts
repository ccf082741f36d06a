import {
  answerTo,
  isDone,
  leftOutWords,
  lockOn,
  type Piece,
  type PlannedStep,
} from '../../tracker/bench/index.ts';

/** What the piece makes of a step, in the column of its window: left out, an answer, a trial; empty for most. */
export function pieceWords(piece: Piece, step: PlannedStep): string {
  if (step.leftOut === true) return leftOutWords(piece, step);
  if (step.skipped) return '';
  const answer = answerTo(piece, step);
  if (answer !== null) return answer;
  if (step.asks !== undefined && isDone(piece, step.id, null)) return 'not answered: a';
  return lockOn(piece, step) === null ? '' : 'after its trial';
}
