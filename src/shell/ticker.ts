import type { Instant, Milliseconds } from '../tracker/time/index.ts';
import type { Ticks } from '../views/port.ts';
import type { Clock } from './clock.ts';
import { createDueTimer, longestWait, type DueTimer } from './due-timer.ts';

export type Ticker = Ticks & Pick<DueTimer, 'wakeAt' | 'stop'>;

/**
 * One clock-aligned ticker for the whole program. It runs while somebody listens: on each second or each minute as
 * asked, and at the instant at which something is due.
 */
export function createTicker(clock: Clock): Ticker {
  let shown = clock.now();
  let every: Milliseconds = 60_000;
  let lastFrame = frameOf(shown, every);

  const pause = (now: Instant): Milliseconds => Math.min(every - (now % every), longestWait);

  const { subscribe, wakeAt, rearm, stop } = createDueTimer(clock, pause, (now, isDue) => {
    const frame = frameOf(now, every);
    if (frame === lastFrame && !isDue) return false;
    lastFrame = frame;
    shown = now;
    return true;
  });

  return {
    subscribe,
    now: () => shown,
    present: () => {
      shown = clock.now();
      return shown;
    },
    pace: (wanted) => {
      if (wanted === every) return;
      every = wanted;
      lastFrame = frameOf(clock.now(), every);
      rearm();
    },
    wakeAt,
    stop,
  };
}

/** Numbers the seconds or minutes: a tick counts only when it lies in another one than the last. */
const frameOf = (instant: Instant, every: Milliseconds): number => Math.floor(instant / every);
