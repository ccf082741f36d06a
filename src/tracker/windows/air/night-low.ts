import { day, type Instant } from '../../time/index.ts';
import type { Reading } from '../../trade/climate.ts';

const nightBegins = '22:00';
const nightEnds = '06:00';
const lookBackDays = 14;
/** Fewer nights than these make no "usual". */
const leastNights = 3;

/**
 * How cold the shop usually gets at night, learned from its own readings: the middle one of the lowest readings between
 * 22:00 and 06:00 of the last two weeks before the last reading, the colder of two. Who reads at day only has none.
 *
 * @param nextClock the first instant at or after another at which the shop's clock shows a time
 * @returns degrees Celsius, or null where fewer than three nights were read
 */
export function usualNightLowC(
  readings: readonly Reading[],
  nextClock: (from: Instant, time: string) => Instant,
): number | null {
  const last = readings.at(-1);
  if (last === undefined) return null;
  const recent = readings.filter(({ at }) => at > last.at - lookBackDays * day);
  const lows: number[] = [];
  let next = 0;
  while (next < recent.length) {
    const at = recent[next]?.at ?? last.at;
    const ends = nextClock(at, nightEnds);
    const begins = nextClock(ends - day / 2, nightBegins);
    const night = recent.slice(next).filter((reading) => reading.at < ends);
    const read = night.filter((reading) => reading.at >= begins).map(({ tempC }) => tempC);
    if (read.length > 0) lows.push(Math.min(...read));
    next += Math.max(1, night.length);
  }
  if (lows.length < leastNights) return null;
  return lows.toSorted((a, b) => a - b)[(lows.length - 1) >> 1] ?? null;
}
