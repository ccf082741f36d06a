import { day, type CalendarDay } from '../../tracker/time/index.ts';

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const months = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'Jun',
  'Jul',
  'Aug',
  'Sep',
  'Oct',
  'Nov',
  'Dec',
] as const;

/** `Tue` */
export const weekdayOf = (on: CalendarDay): string => weekdays[atMidnight(on).getUTCDay()] ?? '';

/** `24 Nov`: the month as a word, so that day and month can't be mixed up anywhere. */
export function shortDay(on: CalendarDay): string {
  const date = atMidnight(on);
  return `${date.getUTCDate()} ${months[date.getUTCMonth()] ?? ''}`;
}

/** `Tue 24 Nov` */
export const dayWords = (on: CalendarDay): string => `${weekdayOf(on)} ${shortDay(on)}`;

/** `Tue 24 Nov 2026` */
export const fullDay = (on: CalendarDay): string =>
  `${dayWords(on)} ${atMidnight(on).getUTCFullYear()}`;

/** `Nov 2026`, of a month as `2026-11`. */
export const monthWords = (month: string): string =>
  `${months[Number(month.slice(5, 7)) - 1] ?? ''} ${month.slice(0, 4)}`;

/** Calendar days from one to the other; negative if the second comes first. */
export const daysBetween = (from: CalendarDay, to: CalendarDay): number =>
  Math.round((atMidnight(to).getTime() - atMidnight(from).getTime()) / day);

/** A calendar day as Date arithmetic in UTC, where every day has 24 hours. */
const atMidnight = (on: CalendarDay): Date => new Date(`${on}T00:00Z`);
