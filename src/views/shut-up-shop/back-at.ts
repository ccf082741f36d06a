import { addDays, instantOfClock, nextClock, shopDay, weekdayOf } from '../format/index.ts';
import type { Instant } from '../../tracker/time/index.ts';

/** When the shop opens again, as long as nobody says otherwise. */
const usualMorning = '07:30';

export const usualBackAt = (now: Instant, zone: string): Instant =>
  nextClock(now, usualMorning, zone);

export type BackAtReading =
  { readonly ok: true; readonly at: Instant } | { readonly ok: false; readonly says: string };

const form = /^(?:([a-z]+)\s+)?(\d{1,2})(?:[:.]?(\d{2}))?\s*(am|pm)?$/;

/** Reads `8`, `7:30`, `7:30 am`, `Mon 8:00`, `tomorrow 9`: the first such moment after now. */
export function readBackAt(text: string, now: Instant, zone: string): BackAtReading {
  const refuse: BackAtReading = {
    ok: false,
    says: `Not set: "${text.trim()}" is no time to be back at. Write 7:30, or Mon 7:30.`,
  };
  const [, word, hours = '', minutes = '00', half] = form.exec(text.trim().toLowerCase()) ?? [];
  const hour = hourOf(Number(hours), half);
  if (hours === '' || hour === null || Number(minutes) > 59) return refuse;
  const time = `${String(hour).padStart(2, '0')}:${minutes}`;
  if (word === undefined) return { ok: true, at: nextClock(now + 1, time, zone) };
  const today = shopDay(now, zone);
  for (let days = 0; days <= 7; days++) {
    const day = addDays(today, days);
    const isNamed = word === 'tomorrow' ? days === 1 : isWeekday(word, weekdayOf(day));
    const at = isNamed ? instantOfClock(day, time, zone) : null;
    if (at !== null && at > now) return { ok: true, at };
  }
  return refuse;
}

/** Hours of a 24-hour day; null where there is none such. */
function hourOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 23 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half === 'pm' ? 12 : 0);
}

const weekdays = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];

/** `we`, `wed` and `wednesday` are Wed. */
const isWeekday = (word: string, short: string): boolean =>
  word.length >= 2 &&
  weekdays.some((whole) => whole.startsWith(short.toLowerCase()) && whole.startsWith(word));
