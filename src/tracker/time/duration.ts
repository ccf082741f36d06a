import { day, hour, minute, type Milliseconds } from './instant.ts';

/** What `readDuration` makes of a text. */
export type DurationReading =
  { readonly ok: true; readonly ms: Milliseconds } | { readonly ok: false; readonly says: string };

const unitLengths: ReadonlyMap<string, Milliseconds> = new Map([
  ['m', minute],
  ['min', minute],
  ['h', hour],
  ['d', day],
]);

const longest = 366 * day;
const examples = 'Write 35, 35 min, 1:20, 2 h or 3 d.';
const refuse = (says: string): DurationReading => ({ ok: false, says });

/**
 * Reads a length of time as a person writes it: `35` and `35 min` are minutes, `1:20` hours and minutes,
 * `2 h`, `2.5 h`, `1 h 20` (hours, then minutes), `3 d`. Refuses what is none (`-5`, `90x`, `1:99`), zero, and more than a year.
 */
export function readDuration(text: string): DurationReading {
  const typed = text.trim().toLowerCase();
  if (typed === '') return refuse(`no length of time given. ${examples}`);
  // A thousand to one person, one to another.
  if (/\d,\d{3}(?!\d)/.test(typed))
    return refuse(`"${text}": write large figures without a comma. ${examples}`);
  const words = typed.replaceAll(',', '.');
  const clock = /^(\d{1,4}):(\d{1,2})$/.exec(words);
  if (clock) {
    const minutes = Number(clock[2]);
    if (minutes > 59)
      return refuse(`"${text}" has ${minutes} minutes in its hour; 59 is the most. ${examples}`);
    return within(text, Number(clock[1]) * hour + minutes * minute);
  }
  const parts = [...words.matchAll(/(\d+(?:\.\d+)?)\s*([a-z]*)\s*/gy)];
  if (parts.map((part) => part[0]).join('') !== words) {
    return refuse(`"${text}" is no length of time. ${examples}`);
  }
  let total = 0;
  let previousUnit: Milliseconds = Number.POSITIVE_INFINITY;
  for (const [, figure, name] of parts) {
    const unit = name === '' ? minute : unitLengths.get(name ?? '');
    if (unit === undefined)
      return refuse(`"${text}": "${name}" is no unit of time here. ${examples}`);
    if (unit >= previousUnit) return refuse(`"${text}" names its units out of order. ${examples}`);
    total += Number(figure) * unit;
    previousUnit = unit;
  }
  return within(text, total);
}

function within(text: string, exact: Milliseconds): DurationReading {
  const ms = Math.round(exact);
  if (ms <= 0) return refuse(`"${text}" is no time at all. ${examples}`);
  if (ms > longest) return refuse(`"${text}" is longer than a year. ${examples}`);
  return { ok: true, ms };
}
