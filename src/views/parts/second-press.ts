import { lockOn, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import type { Instant, Milliseconds } from '../../tracker/time/index.ts';
import type { WithoutTrialState } from '../screens.ts';
import type { RefusedFor } from './refused-for.ts';

/** A second press within this time means it. */
const meansIt: Milliseconds = 15_000;

/**
 * What a key comes to that would begin a step: nothing of its own where no trial keeps it; the refusal to be remembered
 * the first time; the screen that asks why without the trial when it is pressed again.
 */
export function pressOnLocked(
  piece: Piece,
  part: string | null,
  step: PlannedStep | null,
  before: RefusedFor | undefined,
  now: Instant,
): { readonly remember: RefusedFor } | { readonly open: WithoutTrialState } | null {
  if (step === null || lockOn(piece, step) === null) return null;
  const isAgain = before?.step === step.id && now - before.at <= meansIt;
  return isAgain
    ? { open: { is: 'without trial', piece: piece.id, part, step: step.id } }
    : { remember: { step: step.id, at: now } };
}
