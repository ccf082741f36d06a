import type { Press } from '../keys/press.ts';

/** One line of text being written. `cursor` is an offset into it, between two characters as a person counts them; absent it is at the end. */
export type TextField = { readonly text: string; readonly cursor?: number };

/** A field with a text in it and the cursor behind it. */
export const fieldOf = (text: string): TextField => ({ text });

export const cursorOf = ({ text, cursor }: TextField): number =>
  cursor === undefined ? text.length : Math.min(cursor, text.length);

/** What a key does to a field; null for keys that are none of its business (Enter, Esc, up, Tab). */
export function editField(field: TextField, { name, text }: Press): TextField | null {
  const at = cursorOf(field);
  const [before, after] = [field.text.slice(0, at), field.text.slice(at)];
  switch (name) {
    case 'backspace':
      return place(before.slice(0, lastStart(before)), after);
    case 'delete':
      return place(before, after.slice(firstEnd(after)));
    case 'left':
      return place(before.slice(0, lastStart(before)), before.slice(lastStart(before)) + after);
    case 'right':
      return place(before + after.slice(0, firstEnd(after)), after.slice(firstEnd(after)));
    case 'home':
      return place('', field.text);
    case 'end':
      return place(field.text, '');
    default:
      return text === '' ? null : insert(before, text, after);
  }
}

/** A joiner or an accent makes one character with what stands before it: the cursor goes behind the whole. */
function insert(before: string, text: string, after: string): TextField {
  // A tab from a paste has no width of its own.
  const whole = `${before}${text.replaceAll('\t', ' ')}${after}`;
  const wanted = whole.length - after.length;
  const at = boundaries(whole).find((boundary) => boundary >= wanted) ?? whole.length;
  return place(whole.slice(0, at), whole.slice(at));
}

const place = (before: string, after: string): TextField =>
  after === '' ? { text: before } : { text: before + after, cursor: before.length };

let segmenter: Intl.Segmenter | undefined;

/** Characters as a person counts them: letters with their accents, whole emoji. */
export const charactersOf = (text: string): readonly string[] =>
  [...(segmenter ??= new Intl.Segmenter()).segment(text)].map(({ segment }) => segment);

function boundaries(text: string): readonly number[] {
  let at = 0;
  return charactersOf(text).map((character) => (at += character.length));
}

const firstEnd = (text: string): number => boundaries(text)[0] ?? 0;
const lastStart = (text: string): number => boundaries(text).at(-2) ?? 0;
