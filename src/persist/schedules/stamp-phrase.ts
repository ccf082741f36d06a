import * as z from 'zod/mini';
import { stampEvents, type StampChoice, type StampEvent } from '../../tracker/windows/index.ts';

/** Events as files name them: `first stroke`, `clamps off`. */
const eventWords: ReadonlyMap<string, StampEvent> = new Map(
  stampEvents.map((event) => [event.replaceAll('-', ' '), event]),
);

/** What counts from its beginning is taken the first time it happens; what renews or ends something, the last time. */
const firstCounts: ReadonlySet<StampEvent> = new Set([
  'first-stroke',
  'section-on',
  'mixed',
  'in-clamps',
]);

const phraseForm = /^(?:(first|latest) of )?([a-z ]+?(?:, [a-z ]+?)*)(?: of ([A-Z][A-Za-z]*))?$/;
const phraseWords =
  `a stamp such as "first stroke", "first stroke of A" or "latest of first stroke, topped up" ` +
  `(${[...eventWords.keys()].join(', ')})`;

export type StampPhrase = Pick<StampChoice, 'events' | 'agent' | 'which'>;

/** Reads `first stroke of A`, `latest of first stroke, topped up`, `first of in clamps, last stroke`; null for anything else. */
export function readStampPhrase(words: string): StampPhrase | null {
  const [, order, list, agent] = phraseForm.exec(words) ?? [];
  if (list === undefined) return null;
  const events = list.split(', ').map((name) => eventWords.get(name));
  const known = events.filter((event) => event !== undefined);
  const [first] = known;
  if (
    first === undefined ||
    known.length !== events.length ||
    (known.length > 1 && order === undefined)
  )
    return null;
  const which =
    order === undefined
      ? firstCounts.has(first)
        ? 'first'
        : 'last'
      : order === 'first'
        ? 'first'
        : 'last';
  return { events: known, which, ...(agent === undefined ? {} : { agent }) };
}

/** A stamp, or the first or latest of several. */
export const stampPhrase = z.pipe(
  z.string({ error: phraseWords }).check(
    z.refine((words) => readStampPhrase(words) !== null, { error: phraseWords }),
    z.describe(`Which key press it counts from: ${phraseWords}.`),
  ),
  z.transform((words): StampPhrase => {
    const phrase = readStampPhrase(words);
    if (phrase === null) throw new Error(`passed the check but is no stamp: ${words}`);
    return phrase;
  }),
);
