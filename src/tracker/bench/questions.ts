import type { Question } from '../trade/schedule.ts';
import { originalOf } from './left-out.ts';
import type { Piece, PlannedStep } from './piece.ts';
import { isDone } from './progress.ts';

export type AskingStep = PlannedStep & { readonly asks: Question };

const isAsking = (step: PlannedStep): step is AskingStep => step.asks !== undefined;

/** The answer that was given to a step's question, in its words; null where none was. */
export function answerTo(piece: Piece, step: PlannedStep): string | null {
  const given = piece.answers[originalOf(step)]?.answer;
  if (given === undefined) return null;
  return step.asks?.answers.find(({ id }) => id === given)?.says ?? given;
}

/** Steps of a piece with a question, those that are left out aside. */
export const askingSteps = (piece: Piece): readonly AskingStep[] =>
  piece.steps.filter(isAsking).filter(({ leftOut }) => leftOut !== true);

/**
 * The question that waits for its answer: that of the step that was done last. Else the last one that was done, for
 * another answer; else the first that the piece has. Null where no step asks anything.
 */
export function questionOpen(piece: Piece): AskingStep | null {
  const asking = askingSteps(piece);
  const done = asking.filter(({ id }) => isDone(piece, id, null));
  return (
    done.findLast((step) => answerTo(piece, step) === null) ?? done.at(-1) ?? asking[0] ?? null
  );
}

/** The question that finishing a step brings up; null where it has none, or it is answered. */
export function questionOf(piece: Piece, stepId: string): AskingStep | null {
  const step = askingSteps(piece).find(({ id }) => id === stepId);
  return step === undefined || answerTo(piece, step) !== null ? null : step;
}
