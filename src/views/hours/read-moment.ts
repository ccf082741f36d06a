import { minute, readDuration, type Instant } from '../../tracker/time/index.ts';
import { instantOfClock, shopDay, type ShopClock } from '../format/index.ts';

export type MomentReading =
  { readonly ok: true; readonly at: Instant } | { readonly ok: false; readonly says: string };

const examples = 'Write 12:00, or -15 or +10 for minutes earlier or later.';
const refuse = (says: string): MomentReading => ({ ok: false, says: `${says} ${examples}` });

/** The end of a session that is being corrected, and what it is now; `end` null while it is in hand. */
export type CorrectedEnd = {
  readonly which: 'start' | 'end';
  readonly start: Instant;
  readonly end: Instant | null;
};

/**
 * Reads a corrected beginning or end: a time of day (`12:00`, `2:30 pm`), on the day on which the session began, or for an
 * end also on the day on which it ended; or minutes earlier or later than it is now (`-15`, `+1:20`).
 */
export function readMoment(
  text: string,
  { which, start, end }: CorrectedEnd,
  now: Instant,
  shop: ShopClock,
): MomentReading {
  const typed = text.trim().toLowerCase();
  if (typed === '') return refuse('no time given.');
  const current = which === 'start' ? start : (end ?? now);
  const sign = /^[+\-−]/.exec(typed)?.[0];
  if (sign !== undefined) {
    const length = readDuration(typed.slice(1));
    if (!length.ok) return refuse(length.says.split(/(?<=\.) /)[0] ?? length.says);
    return { ok: true, at: current + (sign === '+' ? length.ms : -length.ms) };
  }
  const times = readClock(typed, shop.hours);
  if (times.length === 0) return refuse(`"${text.trim()}" is no time of day.`);
  const days = [start, ...(which === 'end' ? [end ?? now] : [])].map((at) =>
    shopDay(at, shop.zone),
  );
  const moments = [...new Set(days)].flatMap((day) =>
    times.map((time) => instantOfClock(day, time, shop.zone)),
  );
  // An end is the first such time after the beginning; a beginning is the one nearest to what it was.
  const ends = which === 'end' ? moments.filter((at) => at >= start).toSorted((a, b) => a - b) : [];
  const [moment] = [
    ...ends,
    ...moments.toSorted((a, b) => Math.abs(a - current) - Math.abs(b - current)),
  ];
  return moment === undefined ? refuse('no time given.') : { ok: true, at: moment };
}

/** `HH:MM` as the shop's clock would show it in 24 hours; two where a twelve-hour clock leaves it open. */
function readClock(typed: string, hours: ShopClock['hours']): readonly string[] {
  const [, hourText = '', minutes = '00', half] =
    /^(\d{1,2})[:.](\d{2})\s*([ap])?\.?m?\.?$/.exec(typed) ??
    /^(\d{1,2})()\s*([ap])\.?m\.?$/.exec(typed) ??
    [];
  if (hourText === '') return [];
  const hour = Number(hourText);
  const past = minutes === '' ? '00' : minutes;
  if (Number(past) > 59) return [];
  const shown = (at: number): string => `${String(at).padStart(2, '0')}:${past}`;
  if (half !== undefined)
    return hour < 1 || hour > 12 ? [] : [shown((hour % 12) + (half === 'p' ? 12 : 0))];
  if (hour > 23) return [];
  return hours === '12' && hour >= 1 && hour <= 12
    ? [shown(hour % 12), shown((hour % 12) + 12)]
    : [shown(hour)];
}

/** Corrections are told in whole minutes. */
export const wholeMinute = (at: Instant): Instant => Math.round(at / minute) * minute;
