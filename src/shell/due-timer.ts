import type { Instant, Milliseconds } from '../tracker/time/index.ts';
import type { Clock } from './clock.ts';

/** Timers don't count the time a machine sleeps, so no wait is longer than this. */
export const longestWait: Milliseconds = 15_000;

export type DueTimer = {
  readonly subscribe: (listener: () => void) => () => void;
  /** Something is due then; null when nothing is to come. */
  readonly wakeAt: (instant: Instant | null) => void;
  /** Begins the wait anew, after what its length hangs on has changed. */
  readonly rearm: () => void;
  /** For good: who subscribes afterwards is not called either. */
  readonly stop: () => void;
};

/**
 * One timer for all who listen, and none while nobody does.
 * @param pause the longest wait from an instant on
 * @param isToCall whether a waking calls those who listen; asked once for each
 */
export function createDueTimer(
  clock: Clock,
  pause: (now: Instant) => Milliseconds,
  isToCall: (now: Instant, isDue: boolean) => boolean,
): DueTimer {
  const listeners = new Set<() => void>();
  let due: Instant | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let isStopped = false;

  const rearm = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    if (isStopped || listeners.size === 0) return;
    const now = clock.now();
    const wait = due === null ? pause(now) : Math.min(pause(now), Math.max(0, due - now));
    // A timer may fire a little early; a millisecond more puts the waking behind the edge.
    timer = setTimeout(wake, wait + 1);
  };

  const wake = (): void => {
    const now = clock.now();
    const isDue = due !== null && due <= now;
    if (isDue) due = null;
    if (isToCall(now, isDue)) for (const listener of listeners) listener();
    rearm();
  };

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      rearm();
      return () => {
        listeners.delete(listener);
        rearm();
      };
    },
    wakeAt: (instant) => {
      due = instant;
      rearm();
    },
    rearm,
    stop: () => {
      isStopped = true;
      rearm();
    },
  };
}
