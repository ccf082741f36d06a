import type { PingSense } from '../../../src/tracker/bench/index.ts';
import { day, hour, minute, type Instant } from '../../../src/tracker/time/index.ts';
import type { EdgeSense } from '../../../src/tracker/windows/index.ts';

const msOfClock = (time: string): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * hour + minutes * minute;
};

const startOfDay = (instant: Instant): Instant => Math.floor(instant / day) * day;

/** A shop in UTC whose air moves nothing: a span ends as long after its start as the label says. */
export const labelSense: PingSense = {
  spanEnd: (span, from) => from + span.ms,
  nextClock: (from, time) => {
    const sameDay = startOfDay(from) + msOfClock(time);
    return sameDay >= from ? sameDay : sameDay + day;
  },
  instantOf: (calendarDay, time) => Date.parse(`${calendarDay}T00:00:00Z`) + msOfClock(time),
};

/** Air in which what may only grow takes `factor` times as long, and what may only shrink lasts that much less. */
export const airThatSlows = (factor: number): EdgeSense & PingSense => ({
  ...labelSense,
  spanEnd: (span, from) => {
    if (span.may === 'grow') return from + span.ms * Math.max(1, factor);
    if (span.may === 'shrink') return from + span.ms / Math.max(1, factor);
    return from + span.ms;
  },
});
