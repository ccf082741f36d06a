import { readDay, type CalendarDay, type Instant } from '../../tracker/time/index.ts';
import { addDays, instantOfClock, shopDay, type Zone } from '../../views/format/zone.ts';

export type MomentReading =
  { readonly ok: true; readonly at: Instant } | { readonly ok: false; readonly says: string };

const examples = 'Write 14:02, yesterday 16:30, 23 Nov 9:15 or 2026-11-23T09:15-05:00.';
const refuse = (says: string): MomentReading => ({ ok: false, says: `${says} ${examples}` });

/**
 * Reads when something happened, on the shop's clock: `14:02` and `2:02 pm` are today; `yesterday 16:30`, `Mon 9:15`,
 * `23 Nov 9:15`, `2026-11-23 9:15` the last such day; `2026-11-23T09:15:00-05:00` is exact. Whether it has passed is
 * for others to say.
 */
export function readMoment(text: string, now: Instant, zone: Zone): MomentReading {
  const typed = text.trim();
  const exact = readExact(typed);
  if (exact !== null) return exact;
  const parts = splitTime(typed);
  if (parts === null) return refuse(`"${typed}" is no time of day.`);
  const today = shopDay(now, zone);
  const day = parts.day === '' ? today : lastSuchDay(parts.day, today);
  if (day === null) return refuse(`"${parts.day}" is no day.`);
  return { ok: true, at: instantOfClock(day, parts.time, zone) };
}

function readExact(typed: string): MomentReading | null {
  if (!/^\d{4}-\d{2}-\d{2}T/i.test(typed)) return null;
  const form = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})$/i;
  const at = form.test(typed) ? Date.parse(typed) : Number.NaN;
  return Number.isNaN(at) ? refuse(`"${typed}" is no instant.`) : { ok: true, at };
}

/** The day's words, and the time as `14:02`; null if there is no time at the end. */
function splitTime(typed: string): { readonly day: string; readonly time: string } | null {
  const found = /^(.*?)(?:^|[\s,]+)(?:at )?(\d{1,2}):(\d{2})(?:\s*([ap])\.?m\.?)?$/i.exec(typed);
  if (found === null) return null;
  const [, day = '', hours = '', minutes = '', half] = found;
  const hour = Number(hours);
  const isHour = half === undefined ? hour <= 23 : hour >= 1 && hour <= 12;
  if (!isHour || Number(minutes) > 59) return null;
  const inDay = half === undefined ? hour : (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  return { day: day.trim(), time: `${String(inDay).padStart(2, '0')}:${minutes}` };
}

/** The latest day of that name that is not after today; one that can only be to come as such; null if it is none. */
function lastSuchDay(words: string, today: CalendarDay): CalendarDay | null {
  if (/^yesterday$/i.test(words)) return addDays(today, -1);
  if (/^today$/i.test(words)) return today;
  if (/^(in|tomorrow)\b|\b(days?|weeks?)$/i.test(words)) {
    // Whoever asks says that it is still to come.
    const ahead = readDay(words, today);
    return ahead.ok ? ahead.day : null;
  }
  // Days are read forward from a day that far back: a weekday within a week, a date within a year.
  for (const back of [7, 365]) {
    const read = readDay(words, addDays(today, -back));
    if (read.ok && (read.day <= today || /\d{4}/.test(words))) return read.day;
  }
  return null;
}
