import type { Instant } from '../../time/index.ts';
import { readingHoldsFor, type ShopAir } from './shop-air.ts';

/** Time during which a span runs at one pace. */
export type AirStretch = {
  readonly ends: Instant;
  /** How much of the label's time an instant of it is worth. */
  readonly pace: number;
  /** Place of the reading that tells of this air; null before there was any. */
  readonly reading: number | null;
  /** No reading for hours: the usual night low was worse than the last one, and counts. */
  readonly isNight: boolean;
};

/** How a span runs through the shop's air, and whether slow or fast is the worse for it. */
export type Running = {
  /** Its pace in the air of the reading at that place. */
  readonly paceRead: (place: number) => number;
  /** The same air as cold as the shop usually gets at night; as it was read where that isn't known. */
  readonly paceAtNight: (place: number) => number;
  readonly worse: (one: number, other: number) => number;
};

/**
 * The stretches of air from an instant on, without end. A reading is in force until the next. Before the first one it
 * counts back as far as it holds ahead: who reads the meter after the coat has gone on reads the air in which it went on.
 */
export function* airFrom(
  from: Instant,
  readings: ShopAir['readings'],
  running: Running,
): Generator<AirStretch> {
  const first = readings[0];
  let place = lastNotAfter(readings, from);
  if (place < 0 && first !== undefined) {
    const back = first.at - readingHoldsFor;
    if (from < back) yield { ends: back, pace: 1, reading: null, isNight: false };
    place = 0;
  }
  for (; place < readings.length; place += 1) {
    const reading = readings[place];
    if (reading === undefined) return;
    const next = readings[place + 1]?.at ?? Number.POSITIVE_INFINITY;
    const holds = Math.min(next, reading.at + readingHoldsFor);
    const pace = running.paceRead(place);
    if (from < holds) yield { ends: holds, pace, reading: place, isNight: false };
    if (next === holds) continue;
    const worse = running.worse(pace, running.paceAtNight(place));
    yield { ends: next, pace: worse, reading: place, isNight: worse !== pace };
  }
}

/** Place of the last reading at or before an instant; -1 where there is none. */
export function lastNotAfter(
  readings: readonly { readonly at: Instant }[],
  instant: Instant,
): number {
  let low = 0;
  let high = readings.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((readings[middle]?.at ?? 0) <= instant) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
