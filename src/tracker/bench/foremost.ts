import type { Instant } from '../time/index.ts';
import { closesAt, opensAt, stretchAfter, stretchAt } from '../windows/evaluate.ts';
import type { Loss, Window } from '../windows/model.ts';

/** What is lost next if nothing is done: the loss of the stretch in force when late, else of the one after "go". */
export function nextLoss(window: Window, now: Instant): Loss {
  const stretch = stretchAt(window, now);
  if (stretch.meaning === 'late') return stretch.loss;
  const closing = closesAt(window, now);
  if (closing === null) return 'costs nothing';
  // A forbidden gap costs the wait even where the label puts no work on it.
  if (closing.next.meaning === 'keep off' && closing.next.loss === 'costs nothing')
    return 'costs work';
  return closing.next.loss;
}

/** Whether what is lost next in a window is the surface. */
export const losesSurface = (window: Window, now: Instant): boolean =>
  nextLoss(window, now) === 'spoils';

/** Whether a window is open now and something is lost when it closes. */
export const costsSoon = (window: Window, now: Instant): boolean =>
  stretchAt(window, now).meaning === 'go' && nextLoss(window, now) !== 'costs nothing';

/** When it is lost; for what is lost already, when it was. */
export const losingAt = (window: Window, now: Instant): Instant =>
  stretchAt(window, now).meaning === 'late'
    ? stretchAt(window, now).begins
    : (closesAt(window, now)?.at ?? now);

/** How a window that does not spoil ranks its row. */
export function rankOf(window: Window, now: Instant): 'keep off' | 'costs work' | 'costs nothing' {
  switch (stretchAt(window, now).meaning) {
    case 'keep off':
      return 'keep off';
    case 'go':
      return nextLoss(window, now) === 'costs nothing' ? 'costs nothing' : 'costs work';
    case 'wait':
    case 'go after work':
    case 'late':
      return 'costs nothing';
  }
}

/** What orders rows of that rank: a closing, or an opening. */
export function orderOf(window: Window, now: Instant): Instant {
  const rank = rankOf(window, now);
  if (rank === 'costs work') return closesAt(window, now)?.at ?? now;
  if (rank === 'keep off') return stretchAfter(window, now)?.begins ?? Number.MAX_SAFE_INTEGER;
  return opensAt(window) ?? Number.MAX_SAFE_INTEGER;
}

/**
 * What would be lost first. Then what its own step has to follow up, the next pass or the clamps, soonest first; then of
 * milestones what is still to open last, since a step waits for all of them; then what closes first. Last a milestone
 * whose last stroke is not made: while a stripper works, or a filler hazes, its drying tells nothing yet.
 */
export function foremost(windows: readonly Window[], now: Instant): Window | null {
  const weight = (window: Window): readonly [number, number] => {
    if (losesSurface(window, now)) return [0, losingAt(window, now)];
    const { meaning } = stretchAt(window, now);
    const isMilestone = window.rule.milestone !== undefined;
    if (meaning === 'go' && costsSoon(window, now) && !isMilestone)
      return [1, losingAt(window, now)];
    const opens = orderOf(window, now);
    if (meaning === 'keep off' || meaning === 'wait') {
      if (!isMilestone) return [2, opens];
      const isPending = meaning === 'wait' && stretchAfter(window, now) === null;
      return isPending ? [5, 0] : [3, -opens];
    }
    return [4, losingAt(window, now)];
  };
  return windows.reduce<Window | null>((best, window) => {
    if (best === null) return window;
    const [a, b] = [weight(window), weight(best)];
    return a[0] < b[0] || (a[0] === b[0] && a[1] < b[1]) ? window : best;
  }, null);
}
