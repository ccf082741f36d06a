import { hour, minute, type Instant } from '../../../src/tracker/time/index.ts';

/** Eight in the morning of the day on which every test begins: Monday 4 May 2026, 08:00 UTC. */
export const morning: Instant = Date.UTC(2026, 4, 4, 8);
export const today = '2026-05-04';

/** An instant of that day by the clock: `at('9:05')`, `at('9:05:30')`; hours past 24 are the next days'. */
export function at(clock: string): Instant {
  const [hours, minutes, seconds = 0] = clock.split(':').map(Number);
  if (hours === undefined || minutes === undefined) throw new Error(`no clock time: ${clock}`);
  return morning + (hours - 8) * hour + minutes * minute + seconds * 1000;
}
