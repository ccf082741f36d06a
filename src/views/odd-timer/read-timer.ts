import { readDuration, type Milliseconds } from '../../tracker/time/index.ts';

/** What `readTimer` makes of a text. */
export type TimerReading =
  | { readonly ok: true; readonly label: string; readonly ms: Milliseconds }
  | { readonly ok: false; readonly says: string };

const example = 'Write clamps, 35 min.';
const refuse = (says: string): TimerReading => ({ ok: false, says });

type Split = { readonly length: string; readonly label: string };

/**
 * Reads what a timer is for and how long it runs: `clamps, 35 min`, `35 min, clamps`, `35 clamps`, `clamps 1 h 20`.
 * A text that can be split in two ways (`2 doors 35`) is refused.
 */
export function readTimer(text: string): TimerReading {
  const typed = text.trim();
  if (typed === '') return refuse(`nothing was given. ${example}`);
  // A comma between digits belongs to the figure.
  const parts = typed
    .split(/,(?!\d)|(?<!\d),/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length > 1) return readParts(parts);
  const words = typed.split(/\s+/);
  if (reads(typed)) return refuse(`say what it is for. ${example}`);
  const splits = [longestFirst(words, 'before'), longestFirst(words, 'behind')].filter(
    (split) => split !== null,
  );
  const [one, other] = splits;
  if (one === undefined) return refuse(wrongLength(words));
  if (other === undefined) return made(one);
  // A figure with its unit is the length; one without counts things.
  const withUnit = splits.filter(({ length }) => /[a-z:]/i.test(length));
  const [clear, also] = withUnit;
  return clear !== undefined && also === undefined
    ? made(clear)
    : refuse(`"${typed}" may be ${one.length} or ${other.length}: put a comma between. ${example}`);
}

function readParts(parts: readonly string[]): TimerReading {
  // Of several the last is the length: `2 doors, 35, 40` has a figure in its name.
  const at = parts.findLastIndex(reads);
  if (at < 0) return refuse(wrongLength(parts));
  const label = parts.filter((_, index) => index !== at).join(', ');
  return parts.every(reads)
    ? refuse(`say what it is for. ${example}`)
    : made({ length: parts[at] ?? '', label });
}

/** The longest run of words that reads as a length of time, at one end, with a label left over. */
function longestFirst(words: readonly string[], where: 'before' | 'behind'): Split | null {
  for (let count = words.length - 1; count > 0; count -= 1) {
    const length = where === 'before' ? words.slice(0, count) : words.slice(-count);
    const label = where === 'before' ? words.slice(count) : words.slice(0, -count);
    if (reads(length.join(' '))) return { length: length.join(' '), label: label.join(' ') };
  }
  return null;
}

const reads = (text: string): boolean => readDuration(text).ok;

function made({ length, label }: Split): TimerReading {
  const read = readDuration(length);
  return read.ok ? { ok: true, label, ms: read.ms } : refuse(read.says);
}

/** What is wrong with the words that were perhaps meant as a length: the last ones, if they have a figure in them. */
function wrongLength(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  const read = readDuration(last);
  return !read.ok && /\d/.test(last) ? read.says : `there is no length of time in it. ${example}`;
}
