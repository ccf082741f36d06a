import type { Clock } from '../../../src/shell/clock.ts';
import type { Instant, Milliseconds } from '../../../src/tracker/time/index.ts';

/** A clock that moves only when told. The machine's own time moves along, unless the clock is set. */
export function steppedClock(start: Instant) {
  let now = start;
  let up = 1_000_000;
  const clock: Clock & {
    readonly pass: (ms: Milliseconds) => void;
    readonly set: (ms: Milliseconds) => void;
  } = {
    now: () => now,
    uptime: () => up,
    bootId: 'boot',
    pass: (ms) => {
      now += ms;
      up += ms;
    },
    set: (ms) => {
      now += ms;
    },
  };
  return clock;
}

/** 24 November 2026, 14:00 in New York. */
export const startOfTests: Instant = Date.UTC(2026, 10, 24, 19);
