import { begunInHand, nextLoss, type Standing } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { closesAt, opensAt, stateAt, type Window } from '../../tracker/windows/index.ts';

/** A standing that a window decides. */
export type Called = Standing & { readonly window: Window };

/**
 * The rows whose window wants hands now or will, what is lost first coming first. What is in hand has them already, but for
 * what its step has begun and has to follow up: hands may be elsewhere till then.
 */
export const nextCalls = (all: readonly Standing[], now: Instant): readonly Called[] =>
  all
    .filter((standing): standing is Called => standing.window !== null)
    .filter((standing) => standing.rank !== 'in hand' || begunInHand(standing) !== null)
    .filter(({ window }) => isToCome(window, now))
    .sort((a, b) => urgency(a, now) - urgency(b, now));

/** A window that asks for hands now or will; one that can only be waited out, or is to be kept off, doesn't. */
function isToCome(window: Window, now: Instant): boolean {
  const state = stateAt(window, now);
  return state !== 'done' && state !== 'barred' && (opensAt(window) !== null || state === 'late');
}

/** What spoils first; then what is open and will cost work, by its closing; then what is still to open. */
function urgency({ window, rank }: Called, now: Instant): number {
  const waits = stateAt(window, now) === 'before';
  const edge = waits ? opensAt(window) : (closesAt(window, now)?.at ?? now);
  const costs =
    rank === 'costs work' ||
    (rank === 'in hand' && !waits && nextLoss(window, now) === 'costs work');
  const order = rank === 'spoils' ? 0 : costs ? 1 : waits ? 2 : 3;
  return order * aMillennium + (edge ?? now);
}

/** More than any instant, so that the order of kinds comes before that of times. */
const aMillennium = 31_556_952_000_000;
