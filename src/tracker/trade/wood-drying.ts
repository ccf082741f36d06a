import type { Instant, Milliseconds } from '../time/index.ts';

/**
 * Wood goes towards the moisture of its air as e^(-t/tau): after one time constant 63 % of the gap is closed. Real wood
 * dries faster at its surface and slower inside, so one constant is a simplification (after the timelag classes of dead
 * fuels, Fosberg and Deeming, USDA Forest Service RM-207).
 */
export const gapClosed = (elapsed: Milliseconds, timeConstant: Milliseconds): number =>
  1 - Math.exp(-elapsed / timeConstant);

/** Moisture content in percent after a time, from a beginning towards where it comes to rest. */
export const moistureAfter = (
  beginning: number,
  rest: number,
  elapsed: Milliseconds,
  timeConstant: Milliseconds,
): number => rest + (beginning - rest) * (1 - gapClosed(elapsed, timeConstant));

/** How long it takes down to a moisture content; 0 where it is there already, null where it never gets there. */
export function timeDownTo(
  target: number,
  beginning: number,
  rest: number,
  timeConstant: Milliseconds,
): Milliseconds | null {
  if (beginning <= target) return 0;
  if (target <= rest) return null;
  return timeConstant * Math.log((beginning - rest) / (target - rest));
}

/** The time constant that two readings show, the first one earlier; null where they don't fall towards the rest. */
export function timeConstantOf(
  first: MeterReading,
  second: MeterReading,
  rest: number,
): Milliseconds | null {
  const elapsed = second.at - first.at;
  if (elapsed <= 0 || second.percent <= rest || first.percent <= second.percent) return null;
  return elapsed / Math.log((first.percent - rest) / (second.percent - rest));
}

/** What a moisture meter showed, in percent of the dry mass. */
export type MeterReading = { readonly percent: number; readonly at: Instant };

/** When wood is dry enough at the rate of two readings: the likely instant, and what the meter's error makes of it. */
export type DryBy = {
  readonly at: Instant;
  readonly earliest: Instant;
  /** Null where readings that far off would show no drying at all. */
  readonly latest: Instant | null;
};

/** A pin meter shows the same spot again within about half a point (common practice, no source). */
export const meterError = 0.5;

/**
 * When two readings say that the wood is down to a target.
 * Null where they don't fall, or where it would come to rest above the target.
 */
export function dryBy(
  first: MeterReading,
  second: MeterReading,
  rest: number,
  target: number,
): DryBy | null {
  const likely = whenDown(first, second, rest, target);
  if (likely === null) return null;
  const off = (reading: MeterReading, by: number): MeterReading => ({
    ...reading,
    percent: reading.percent + by,
  });
  // Seen to fall faster, it is dry sooner.
  const soon = whenDown(off(first, meterError), off(second, -meterError), rest, target);
  return {
    at: likely,
    earliest: Math.min(likely, soon ?? second.at),
    latest: whenDown(off(first, -meterError), off(second, meterError), rest, target),
  };
}

function whenDown(
  first: MeterReading,
  second: MeterReading,
  rest: number,
  target: number,
): Instant | null {
  if (second.percent <= target) return second.at;
  const timeConstant = timeConstantOf(first, second, rest);
  if (timeConstant === null) return null;
  const takes = timeDownTo(target, second.percent, rest, timeConstant);
  return takes === null ? null : second.at + takes;
}
