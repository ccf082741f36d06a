import type { Instant, Milliseconds } from '../tracker/time/index.ts';
import type { Ticks } from '../views/port.ts';
import type { Clock } from './clock.ts';

export type Ticker = Ticks & {
  /** Something will be due then: tick at that instant too. Null when nothing is to come. */
  readonly wakeAt: (instant: Instant | null) => void;
  readonly stop: () => void;
};

/** Timers don't count the time a machine sleeps, so no wait is longer than this. */
const longestWait: Milliseconds = 15_000;

/**
 * One clock-aligned ticker for the whole program. It runs while somebody listens: on each second or each minute as
 * asked, and at the instant at which something is due.
 */
export function createTicker(clock: Clock): Ticker {
  const listeners = new Set<() => void>();
  let shown = clock.now();
  let every: Milliseconds = 60_000;
  let due: Instant | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let lastFrame = frameOf(shown, every);

  const arm = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    if (listeners.size === 0) return;
    const now = clock.now();
    const next = Math.min(
      every - (now % every),
      longestWait,
      due === null ? longestWait : Math.max(0, due - now),
    );
    // A timer may fire a little early; a millisecond more puts the tick behind the edge.
    timer = setTimeout(tick, next + 1);
  };

  const tick = (): void => {
    const now = clock.now();
    const frame = frameOf(now, every);
    const isDue = due !== null && due <= now;
    if (frame !== lastFrame || isDue) {
      lastFrame = frame;
      shown = now;
      if (isDue) due = null;
      for (const listener of listeners) listener();
    }
    arm();
  };

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      arm();
      return () => {
        listeners.delete(listener);
        if (listeners.size === 0) arm();
      };
    },
    now: () => shown,
    present: () => {
      shown = clock.now();
      return shown;
    },
    pace: (wanted) => {
      if (wanted === every) return;
      every = wanted;
      lastFrame = frameOf(clock.now(), every);
      arm();
    },
    wakeAt: (instant) => {
      if (instant === due) return;
      due = instant;
      arm();
    },
    stop: () => {
      listeners.clear();
      arm();
    },
  };
}

/** Numbers the seconds or minutes: a tick counts only when it lies in another one than the last. */
const frameOf = (instant: Instant, every: Milliseconds): number => Math.floor(instant / every);
