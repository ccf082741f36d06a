import { isCalendarDay, type CalendarDay } from './calendar-day.ts';
import { day, type Instant } from './instant.ts';

/** What `readDay` makes of a text. */
export type DayReading =
  { readonly ok: true; readonly day: CalendarDay } | { readonly ok: false; readonly says: string };

const weekdays = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];
const months = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];
const counts = new Map([
  ['a', 1],
  ['one', 1],
  ['two', 2],
  ['three', 3],
]);

/** Further ahead than this somebody slipped: ten years. */
const furthest = 3660;
const examples = 'Write 28 Nov, 2026-11-28, Sat, tomorrow or in 3 days.';
const refuse = (says: string): DayReading => ({ ok: false, says: `${says} ${examples}` });

/**
 * Reads a calendar day as a person writes it: `28 Nov`, `Nov 28`, `28 November 2027`, `Sat 28 Nov`, `2026-11-28`, `Sat`
 * (the next one after today), `today`, `tomorrow`, `in 3 days`, `in a week`. Without a year it is the next such day from
 * today on. Figures alone (`11/12`) are refused: one person's month is another's day.
 */
export function readDay(text: string, today: CalendarDay): DayReading {
  const words = text
    .trim()
    .toLowerCase()
    .split(/[\s,]+/)
    .map((word) => (word === '.' ? word : word.replace(/\.$/, '')))
    .filter((word) => word !== '');
  const typed = words.join(' ');
  if (typed === '') return refuse('no day given.');
  if (typed === 'today') return { ok: true, day: today };
  if (typed === 'tomorrow') return { ok: true, day: later(today, 1) };
  const ahead = /^(?:in )?(\d{1,5}|a|one|two|three) (days?|weeks?)$/.exec(typed);
  if (ahead) return readAhead(text, today, ahead[1] ?? '', ahead[2] ?? '');
  const written = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(typed);
  if (written) {
    const [, year = '', month = '', date = ''] = written;
    return existing(text, `${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`);
  }
  if (/^\d{1,4}[./-]\d{1,2}([./-]\d{0,4})?$/.test(typed))
    return refuse(`"${text.trim()}" may be read two ways: write the month as a word.`);
  const [first = '', ...others] = words;
  const named = nameAt(weekdays, first);
  if (named === null) return readDate(text, words, today);
  if (others.length === 0) return { ok: true, day: later(today, daysTo(named, today)) };
  const date = readDate(text, others, today);
  if (!date.ok || weekdayOf(date.day) === named) return date;
  return refuse(
    `${date.day} is a ${titled(weekdays[weekdayOf(date.day)])}, no ${titled(weekdays[named])}.`,
  );
}

function readAhead(text: string, today: CalendarDay, count: string, unit: string): DayReading {
  const days = (counts.get(count) ?? Number(count)) * (unit.startsWith('week') ? 7 : 1);
  if (days > furthest) return refuse(`"${text.trim()}" is more than ten years ahead.`);
  return { ok: true, day: later(today, days) };
}

/** `28 nov`, `nov 28`, each perhaps with a year. */
function readDate(text: string, words: readonly string[], today: CalendarDay): DayReading {
  const month = words.map((word) => nameAt(months, word)).find((found) => found !== null);
  const figures = words
    .filter((word) => /^\d/.test(word))
    .map((word) => word.replace(/(st|nd|rd|th)$/, ''));
  const [date = '', year] = figures;
  const isDate =
    month !== undefined &&
    words.length === figures.length + 1 &&
    /^\d{1,2}$/.test(date) &&
    /^(\d{4})?$/.test(year ?? '');
  if (!isDate || figures.length > 2) return refuse(`"${text.trim()}" is no day.`);
  const inYear = (wanted: number): CalendarDay =>
    `${wanted}-${String(month + 1).padStart(2, '0')}-${date.padStart(2, '0')}`;
  if (year !== undefined) return existing(text, inYear(Number(year)));
  const thisYear = Number(today.slice(0, 4));
  const next = [thisYear, thisYear + 1]
    .map(inYear)
    .find((day) => isCalendarDay(day) && day >= today);
  if (next !== undefined) return { ok: true, day: next };
  const isLeapDay = month === 1 && date === '29';
  return isLeapDay ? refuse('no 29 Feb this year or next: put the year to it.') : noSuchDay(text);
}

const existing = (text: string, wanted: CalendarDay): DayReading =>
  isCalendarDay(wanted) ? { ok: true, day: wanted } : noSuchDay(text);

const noSuchDay = (text: string): DayReading => refuse(`"${text.trim()}" is on no calendar.`);

/** Which of the names a word is the beginning of (`sat`, `sept`), from three letters on; null if none. */
function nameAt(names: readonly string[], word: string): number | null {
  const index = word.length < 3 ? -1 : names.findIndex((name) => name.startsWith(word));
  return index < 0 ? null : index;
}

const noonOf = (on: CalendarDay): Instant => Date.parse(`${on}T12:00Z`);
const later = (from: CalendarDay, days: number): CalendarDay =>
  new Date(noonOf(from) + days * day).toISOString().slice(0, 10);
const weekdayOf = (on: CalendarDay): number => new Date(noonOf(on)).getUTCDay();
/** From 1 to 7: a weekday's name never means today. */
const daysTo = (weekday: number, today: CalendarDay): number =>
  ((weekday - weekdayOf(today) + 6) % 7) + 1;
const titled = (name = ''): string => name.charAt(0).toUpperCase() + name.slice(1);
