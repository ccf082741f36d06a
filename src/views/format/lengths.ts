import { hour, minute, second, type Instant, type Milliseconds } from '../../tracker/time/index.ts';
import { dayNear, nearness, type ShopClock } from './clock.ts';

/** Cells that a time left takes in a column. */
export const leftCells = 6;

const minutesTold = 100;

/**
 * A count-down in at most six cells: `0:40` below 10 minutes, `41 min` below 100, `4 h 01`, and from 10 hours on `14 h`.
 * Seconds are rounded up, so that 0:00 comes when it is over; minutes down, so that there is never less than told.
 * Past its end it stays at `0:00`.
 */
export function timeLeftOf(ms: Milliseconds): string {
  const seconds = Math.max(0, Math.ceil(ms / second));
  if (seconds < 600) return `${Math.floor(seconds / 60)}:${twoDigits(seconds % 60)}`;
  return minutesOrHours(seconds * second);
}

/** The same up to midnight, then only the day: `Wed`, `14 Dec`. Below 100 minutes midnight does not matter. */
export function timeLeft(until: Instant, now: Instant, shop: ShopClock): string {
  const left = until - now;
  if (left < minutesTold * minute || nearness(until, now, shop) === 'today')
    return timeLeftOf(left);
  return dayNear(until, now, shop);
}

/** A count-up in the same cells, after "since": `0 min`, `27 min`, `3 h 10`; over midnight the day it began. */
export function timeSince(from: Instant, now: Instant, shop: ShopClock): string {
  const spent = Math.max(0, now - from);
  if (spent < minutesTold * minute || nearness(from, now, shop) === 'today')
    return minutesOrHours(spent);
  return dayNear(from, now, shop);
}

/** Working minutes in a sentence: `27 min`, `3 h 10`, `12 h 40`. */
export function minutesSpent(ms: Milliseconds): string {
  const minutes = Math.floor(Math.max(0, ms) / minute);
  return minutes < minutesTold
    ? `${minutes} min`
    : `${Math.floor(minutes / 60)} h ${twoDigits(minutes % 60)}`;
}

/** As it is spoken: `40 seconds`, `4 hours 1 minute`, `2 days`. */
export function lengthAloud(ms: Milliseconds): string {
  const seconds = Math.max(0, Math.ceil(ms / second));
  if (seconds < 60) return counted(seconds, 'second');
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return counted(minutes, 'minute');
  const hours = Math.floor(minutes / 60);
  if (hours >= 48) return counted(Math.floor(hours / 24), 'day');
  return minutes % 60 === 0
    ? counted(hours, 'hour')
    : `${counted(hours, 'hour')} ${counted(minutes % 60, 'minute')}`;
}

const counted = (count: number, unit: string): string =>
  `${count} ${unit}${count === 1 ? '' : 's'}`;

const twoDigits = (figure: number): string => String(figure).padStart(2, '0');

const minutesOrHours = (ms: Milliseconds): string =>
  ms < 10 * hour ? minutesSpent(ms) : `${Math.floor(ms / hour)} h`;
