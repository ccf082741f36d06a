import * as z from 'zod/mini';
import { milestones, type Loss, type WindowKind } from '../../tracker/windows/index.ts';
import {
  chemistry,
  duration,
  durationByWood,
  durationOf,
  group,
  named,
  oneOf,
  text,
  yes,
} from './fields.ts';
import { readStampPhrase, stampPhrase } from './stamp-phrase.ts';

/** How windows are written in products and schedules. The two forms below come to the same rules in `make-window.ts`. */

const kinds = ['chemical', 'coat', 'glue', 'cure', 'pot'] as const satisfies readonly WindowKind[];
const losses = ['spoils', 'costs work', 'costs nothing'] as const satisfies readonly Loss[];

export const sourceName = text('the name of a source, as listed under "sources"');

/** One source for a row, or one for its opening and one for its closing. */
export const rowSource = z.union([
  sourceName,
  group('the sources of a row', { opens: z.optional(sourceName), closes: z.optional(sourceName) }),
]);

/** A time in which the surface must be left alone, between two in which it may be worked. */
const gap = group('a forbidden gap', {
  from: duration,
  until: durationOf('the end of the forbidden gap, a length of time such as 48 h'),
  because: text('what happens if it is worked in the gap'),
});

const consequence = {
  'keep off': z.optional(gap),
  then: z.optional(text('what is to be done after the closing, such as "scuff 320 first"')),
  loss: z.optional(oneOf('a loss', losses)),
  'not yet adds': z.optional(duration),
  gear: z.optional(text('protection to have on, such as "gloves, goggles"')),
  source: z.optional(rowSource),
};

/** A coat's milestone: opens so long after the last stroke, closes so long after the first. */
export const coatRow = group('a milestone', {
  opens: duration,
  closes: z.optional(duration),
  ...consequence,
});
export type CoatRow = z.infer<typeof coatRow>;

/** Milestones of a coat, each with its row. */
export const coat = named('a coat', milestones, coatRow);
export type Coat = z.infer<typeof coat>;

const endings = ['next pass', 'needing step', 'ready', 'nothing'] as const;
const endedByWords = `a stamp such as "first stroke of B", or one of: ${endings.join(', ')}`;

export type EndedBy =
  | { readonly by: (typeof endings)[number] }
  | { readonly by: 'stamp'; readonly phrase: NonNullable<ReturnType<typeof readStampPhrase>> };

const readEnding = (words: string): EndedBy | null => {
  const ending = endings.find((each) => each === words);
  if (ending !== undefined) return { by: ending };
  const phrase = readStampPhrase(words);
  return phrase === null ? null : { by: 'stamp', phrase };
};

const endedBy = z.pipe(
  z.string({ error: endedByWords }).check(
    z.refine((words) => readEnding(words) !== null, { error: endedByWords }),
    z.describe(`What ends the window: ${endedByWords}.`),
  ),
  z.transform((words): EndedBy => {
    const ending = readEnding(words);
    if (ending === null) throw new Error(`passed the check but ends nothing: ${words}`);
    return ending;
  }),
);

const windowFields = {
  kind: oneOf('a kind of window', kinds),
  do: text('what there is to do in it, such as "B on"'),
  milestone: z.optional(oneOf('a milestone', milestones)),
  per: z.optional(oneOf('a scope', ['section', 'step'])),
  'starts at': stampPhrase,
  'opens from': z.optional(stampPhrase),
  'opens as': z.optional(chemistry),
  'closes from': z.optional(stampPhrase),
  'closes as': z.optional(chemistry),
  'closes covered': z.optional(
    durationOf('how long it stays wet under film from the covering on, such as 24 h'),
  ),
  'ended by': endedBy,
  'can be tried': z.optional(yes),
  ...consequence,
};

const byId = 'windows by their ids';

/** Any other window of a product: a dwell, wiping off, time in clamps, a pot, the gap between passes. */
const windowRow = group('a window', {
  ...windowFields,
  opens: z.optional(durationByWood),
  closes: z.optional(durationByWood),
});
export type WindowRow = z.infer<typeof windowRow>;
export const windows = z.record(text('the id of a window'), windowRow, { error: byId });

/** A window of a step's own. What differs by wood belongs to a product. */
export const stepWindows = z.record(
  text('the id of a window'),
  group('a window', { ...windowFields, opens: z.optional(duration), closes: z.optional(duration) }),
  { error: byId },
);
