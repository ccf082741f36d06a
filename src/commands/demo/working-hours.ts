import type { Instant, Milliseconds } from '../../tracker/time/index.ts';
import {
  addDays,
  instantOfClock,
  shopDay,
  weekdayOf,
  type Zone,
} from '../../views/format/index.ts';

/** One pair of hands over many days: what is booked is not booked again. */
export type Hands = {
  /** Books the first stretch of that length at or after `from`, within working hours. */
  readonly book: (from: Instant, length: Milliseconds) => Instant;
};

const opens = '09:00';
const closes = '18:00';

export function handsOf(zone: Zone): Hands {
  const booked: { readonly from: Instant; readonly to: Instant }[] = [];
  const fit = (from: Instant, length: Milliseconds): Instant => {
    let at = from;
    for (;;) {
      const day = shopDay(at, zone);
      const [open, close] = [instantOfClock(day, opens, zone), instantOfClock(day, closes, zone)];
      const begins = Math.max(at, open);
      const isWorkday = weekdayOf(day) !== 'Sun';
      const clash = booked.find((each) => each.from < begins + length && begins < each.to);
      if (isWorkday && begins + length <= close && clash === undefined) return begins;
      at =
        isWorkday && clash !== undefined && clash.to + length <= close
          ? clash.to
          : instantOfClock(addDays(day, 1), opens, zone);
    }
  };
  return {
    book: (from, length) => {
      const begins = fit(from, length);
      booked.push({ from: begins, to: begins + length });
      return begins;
    },
  };
}
