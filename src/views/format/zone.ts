import {
  day,
  minute,
  second,
  type CalendarDay,
  type Instant,
  type Milliseconds,
} from '../../tracker/time/index.ts';

/**
 * A zone by its name in the IANA list (`Europe/London`), or `auto`: the machine's own, asked of Date, which spares
 * loading Intl (half of what starting Node costs).
 */
export type Zone = string;

/** What the shop's calendar and clock show at an instant. */
export type WallTime = {
  readonly day: CalendarDay;
  readonly hour: number;
  readonly minute: number;
};

/** Where the shop is ahead of UTC this is positive. */
export function zoneOffset(instant: Instant, zone: Zone): Milliseconds {
  if (zone === 'auto') return -new Date(instant).getTimezoneOffset() * minute;
  const slot = Math.floor(instant / slotLength) * slotLength;
  const offset = offsetAtSlot(slot, zone);
  return offset === offsetAtSlot(slot + slotLength, zone) ? offset : readOffset(instant, zone);
}

export function wallTime(instant: Instant, zone: Zone): WallTime {
  const local = instant + zoneOffset(instant, zone);
  const minutes = Math.floor((local - Math.floor(local / day) * day) / minute);
  return { day: dayOf(local), hour: Math.floor(minutes / 60), minute: minutes % 60 };
}

/** The day on the shop's calendar. */
export const shopDay = (instant: Instant, zone: Zone): CalendarDay =>
  dayOf(instant + zoneOffset(instant, zone));

/** The month of an instant in a zone, as `2026-11`. */
export const monthIn =
  (zone: Zone) =>
  (instant: Instant): string =>
    shopDay(instant, zone).slice(0, 7);

/** The calendar day that many days later, or earlier if negative. */
export const addDays = (from: CalendarDay, days: number): CalendarDay =>
  dayOf(utcOf(from, '00:00') + days * day);

/**
 * The instant at which the shop's clock shows `time` (`07:30`) on that day. Read as RFC 5545 section 3.3.5 reads local
 * times: of a time that comes twice the first; a time that the clock skips by the offset before the skip, so 02:30 on a
 * night without it is what shows as 03:30.
 */
export function instantOfClock(on: CalendarDay, time: string, zone: Zone): Instant {
  const local = utcOf(on, time);
  return instantsShowing(local, zone)[0] ?? local - zoneOffset(local - day, zone);
}

/** The first instant at or after `from` at which the shop's clock shows `time`; a skipped time as in `instantOfClock`. */
export function nextClock(from: Instant, time: string, zone: Zone): Instant {
  // A clock set back over midnight shows the evening of the day before once more.
  let on = addDays(shopDay(from, zone), -1);
  for (;;) {
    const shown = instantsShowing(utcOf(on, time), zone);
    const found = (shown.length > 0 ? shown : [instantOfClock(on, time, zone)]).find(
      (instant) => instant >= from,
    );
    if (found !== undefined) return found;
    on = addDays(on, 1);
  }
}

/** When the shop's next calendar day begins; where midnight is skipped, the instant of the skip. */
export function midnightAfter(now: Instant, zone: Zone): Instant {
  const local = utcOf(addDays(shopDay(now, zone), 1), '00:00');
  return instantsShowing(local, zone).find((instant) => instant > now) ?? skipOver(local, zone);
}

/** Before this hour a person still up belongs to the evening before. */
const nightEnds = 5;

/** The noon after the coming night: the far end of the time bars. It moves on by a day at 05:00. */
export function noonAfterNight(now: Instant, zone: Zone): Instant {
  const minutes = Math.floor(now / minute);
  if (lastNoon?.minutes !== minutes || lastNoon.zone !== zone) {
    const wall = wallTime(now, zone);
    const on = wall.hour < nightEnds ? wall.day : addDays(wall.day, 1);
    lastNoon = { minutes, zone, noon: instantOfClock(on, '12:00', zone) };
  }
  return lastNoon.noon;
}

/** Every frame asks, and all within a minute have the same one. */
let lastNoon: { minutes: number; zone: Zone; noon: Instant } | null = null;

/** Instants at which the clock shows a local time, given as if it were UTC: none when skipped, two when it comes twice. */
function instantsShowing(local: number, zone: Zone): readonly Instant[] {
  const offsets = new Set([zoneOffset(local - day, zone), zoneOffset(local + day, zone)]);
  return [...offsets]
    .map((offset) => ({ offset, instant: local - offset }))
    .filter(({ offset, instant }) => zoneOffset(instant, zone) === offset)
    .map(({ instant }) => instant)
    .sort((a, b) => a - b);
}

/** The instant at which the clock jumps over a local time that it never shows. */
function skipOver(local: number, zone: Zone): Instant {
  const after = zoneOffset(local + day, zone);
  let before = local - after;
  let reached = local - zoneOffset(local - day, zone);
  while (reached - before > 1) {
    const middle = Math.floor((before + reached) / 2);
    if (zoneOffset(middle, zone) === after) reached = middle;
    else before = middle;
  }
  return reached;
}

const dayOf = (local: number): CalendarDay => new Date(local).toISOString().slice(0, 10);

function utcOf(on: CalendarDay, time: string): number {
  const local = Date.parse(`${on}T${time}:00Z`);
  if (Number.isNaN(local)) throw new RangeError(`${on} ${time} is no day and clock time`);
  return local;
}

/** Offsets are asked for at these steps and kept, as a screen asks for the same few hours every second. */
const slotLength = 15 * minute;
const slotsKept = 2000;

const slotsByZone = new Map<Zone, Map<Instant, Milliseconds>>();

function offsetAtSlot(slot: Instant, zone: Zone): Milliseconds {
  let slots = slotsByZone.get(zone);
  if (slots === undefined) slotsByZone.set(zone, (slots = new Map<Instant, Milliseconds>()));
  let offset = slots.get(slot);
  if (offset === undefined) {
    if (slots.size >= slotsKept) slots.clear();
    slots.set(slot, (offset = readOffset(slot, zone)));
  }
  return offset;
}

const formatsByZone = new Map<Zone, Intl.DateTimeFormat>();

/** Asks Intl, which knows the IANA list, what the clock shows. */
function readOffset(instant: Instant, zone: Zone): Milliseconds {
  let format = formatsByZone.get(zone);
  if (format === undefined) formatsByZone.set(zone, (format = formatOf(zone)));
  const shown: Partial<Record<Intl.DateTimeFormatPartTypes, number>> = {};
  for (const { type, value } of format.formatToParts(instant)) shown[type] = Number(value);
  const {
    year = 0,
    month = 0,
    day: dayOfMonth = 0,
    hour = 0,
    minute: minutes = 0,
    second: seconds = 0,
  } = shown;
  return (
    Date.UTC(year, month - 1, dayOfMonth, hour, minutes, seconds) -
    Math.floor(instant / second) * second
  );
}

const formatOf = (zone: Zone): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
