import type { Milliseconds } from '../../tracker/time/index.ts';
import type { Clock } from '../clock.ts';
import { createDueTimer, longestWait, type DueTimer } from '../due-timer.ts';

/** What a background without a screen waits on. */
export type Waking = Pick<DueTimer, 'subscribe' | 'wakeAt' | 'stop'>;

/** While something spoils, seconds count. */
const shortWait: Milliseconds = 5000;

/**
 * Wakes a process that has no screen: at what is due, and every few seconds to look at clock and store again.
 * @param seconds whether seconds count just now
 */
export function createWaking(
  clock: Clock,
  seconds: () => boolean,
  usualWait: Milliseconds = longestWait,
): Waking {
  const pause = (): Milliseconds => (seconds() ? Math.min(shortWait, usualWait) : usualWait);
  return createDueTimer(clock, pause, () => true);
}
