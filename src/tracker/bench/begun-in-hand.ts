import type { Window } from '../windows/model.ts';
import type { Standing } from './standing.ts';

/**
 * What the step in hand has begun itself and has to follow up: a dwell, the clamps, the next pass. It says more than since
 * when the piece is in hand. Null where its milestones alone run, which are for later steps, and while a stroke is going
 * on that its next pass will count from.
 */
export function begunInHand({ rank, session, piece, window }: Standing): Window | null {
  if (rank !== 'in hand' || window === null || window.rule.milestone !== undefined) return null;
  if (window.stretches.every(({ meaning }) => meaning === 'wait')) return null;
  const worksOnIt = session?.targets.some(
    (target) => target.piece === piece?.id && target.step === window.subject.stepId,
  );
  return worksOnIt === true ? window : null;
}
