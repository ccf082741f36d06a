import { readFileSync } from 'node:fs';
import { uptime } from 'node:os';
import { clockStep, type ClockReading } from '../tracker/bench/index.ts';
import type { Instant, Milliseconds } from '../tracker/time/index.ts';

/** The only source of the present. One is made in main.ts; tests step their own. */
export type Clock = {
  readonly now: () => Instant;
  /** Time since the machine started, which no setting of the clock moves; null where the machine does not say. */
  readonly uptime: () => Milliseconds | null;
  /** Which start of the machine this is; null where the machine does not say. */
  readonly bootId: string | null;
};

/** What the clock shows, in the form in which facts carry it. */
export function clockReading(clock: Clock): ClockReading {
  let reading = readOnce(clock);
  // Where the machine slept in the middle, the two times don't belong together.
  for (let more = mostReadings; more > 0 && clock.now() - reading.told > atOnce; more--)
    reading = readOnce(clock);
  return reading;
}

const atOnce: Milliseconds = 500;
const mostReadings = 3;

const readOnce = (clock: Clock): ClockReading => ({
  told: clock.now(),
  uptimeMs: clock.uptime(),
  bootId: clock.bootId,
});

/** A moment of before as the clock shows it now, which may have been set since. */
export const asShownNow = (before: ClockReading, present: ClockReading): ClockReading => ({
  ...before,
  told: before.told + (clockStep(before, present) ?? 0),
});

export const systemClock = (): Clock => ({
  now: () => Date.now(),
  uptime: () => Math.round(uptime() * 1000),
  bootId: readBootId(),
});

function readBootId(): string | null {
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  } catch {
    // Only Linux has it.
    return null;
  }
}
