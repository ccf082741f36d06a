import type { Instant, Milliseconds } from '../../tracker/time/index.ts';
import type { Clock } from '../clock.ts';
import type { Ticker } from '../ticker.ts';

export type Waking = Pick<Ticker, 'subscribe' | 'wakeAt'> & { readonly stop: () => void };

/** Timers don't count the time a machine sleeps, so no wait is longer than this. */
const usualWait: Milliseconds = 15_000;
/** While something spoils, seconds count. */
const shortWait: Milliseconds = 5000;

/**
 * Wakes a process that has no screen: at what is due, and every few seconds to look at clock and store again.
 * @param seconds whether seconds count just now
 */
export function createWaking(
  clock: Clock,
  seconds: () => boolean,
  longestWait: Milliseconds = usualWait,
): Waking {
  const listeners = new Set<() => void>();
  let due: Instant | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let isStopped = false;

  const arm = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    if (isStopped || listeners.size === 0) return;
    const longest = seconds() ? Math.min(shortWait, longestWait) : longestWait;
    const wait = due === null ? longest : Math.min(longest, Math.max(0, due - clock.now()));
    // A timer may fire a little early; a millisecond more puts the waking behind the edge.
    timer = setTimeout(wake, wait + 1);
  };

  const wake = (): void => {
    if (due !== null && due <= clock.now()) due = null;
    for (const listener of listeners) listener();
    arm();
  };

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      arm();
      return () => {
        listeners.delete(listener);
        arm();
      };
    },
    wakeAt: (instant) => {
      due = instant;
      arm();
    },
    stop: () => {
      isStopped = true;
      arm();
    },
  };
}
