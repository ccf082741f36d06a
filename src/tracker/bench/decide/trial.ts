import type { NewBenchFact } from '../facts.ts';
import type { IntentContext } from '../intents.ts';
import { originalOf } from '../left-out.ts';
import { refuse, type Outcome } from '../outcome.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { lockOn, lockWords } from '../trials.ts';
import { factAt } from './context.ts';

/** Refuses to begin a step whose trial wasn't found ready. */
export function locked(piece: Piece, step: PlannedStep, not: string): Outcome | null {
  const lock = lockOn(piece, step);
  return lock === null
    ? null
    : refuse(
        `${not}: its trial first: ${lockWords(piece, lock)}. The same key again: without it, and why.`,
      );
}

/** Goes on without the trial where a reason is given; else refuses. No facts where nothing keeps the step. */
export function lockedUnless(
  piece: Piece,
  step: PlannedStep,
  reason: string | undefined,
  context: IntentContext,
  not: string,
): readonly NewBenchFact[] | Outcome {
  if (lockOn(piece, step) === null) return [];
  if (reason === undefined) return locked(piece, step, not) ?? [];
  const words = reason.trim();
  if (words === '') return refuse(`${not}: say why without its trial; it stands on the job card.`);
  const body = { piece: piece.id, step: originalOf(step), reason: words };
  return [factAt(context, { kind: 'trial-waived', body })];
}
