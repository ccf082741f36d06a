import * as z from 'zod/mini';
import { drivers, mostCounted, stepClasses } from '../../tracker/trade/index.ts';
import { milestones, stampEvents, type StampEvent } from '../../tracker/windows/index.ts';
import { cautions, group, id, numberFrom, oneOf, text, wholeNumber, yes } from './fields.ts';
import { condition, minutesTimes, question, trial } from './piece-form.ts';
import { products, sources } from './product-form.ts';
import { readStampPhrase } from './stamp-phrase.ts';
import { sourceName, stepWindows } from './window-form.ts';

/** "Done" is the last stroke by itself, so a step plans every other stamp only. */
const plannable = stampEvents
  .filter((event) => event !== 'last-stroke')
  .map((event) => event.replaceAll('-', ' '));
const stampWords = `one stamp such as "first stroke" or "first stroke of A" (${plannable.join(', ')})`;

type OneStamp = { readonly event: StampEvent; readonly agent?: string };

function readOneStamp(words: string): OneStamp | null {
  const phrase = readStampPhrase(words);
  const event = phrase?.events.length === 1 ? phrase.events[0] : undefined;
  if (phrase === null || event === undefined || event === 'last-stroke') return null;
  return phrase.agent === undefined ? { event } : { event, agent: phrase.agent };
}

const oneStamp = z.pipe(
  z.string({ error: stampWords }).check(
    z.refine((words) => readOneStamp(words) !== null, { error: stampWords }),
    z.describe(`A key press that the step expects: ${stampWords}.`),
  ),
  z.transform((words): OneStamp => {
    const stamp = readOneStamp(words);
    if (stamp === null) throw new Error(`passed the check but is no stamp: ${words}`);
    return stamp;
  }),
);

/** A stamp, or a stamp with the words that the foot of the screen has for it. */
const plannedStamp = z.union([
  oneStamp,
  group('a planned stamp', { stamp: oneStamp, says: text('words for the stamp') }),
]);

const longestDay = 24 * 60;
const minutesFrom = (least: number) => numberFrom(least, longestDay, 'a number of minutes');

/** One line of a finishing schedule. */
export const step = group('a step', {
  id,
  name: text('a name'),
  class: oneOf('a step class', stepClasses),
  minutes: group('minutes such as {typical: 20, low: 10, high: 40}', {
    typical: minutesFrom(1),
    low: minutesFrom(1),
    high: minutesFrom(1),
  }),
  driver: oneOf('a driver', drivers),
  'minutes for': z.optional(wholeNumber(1, mostCounted, 'number of fittings, joints or drawers')),
  setup: minutesFrom(0),
  product: z.optional(text('the id of a product')),
  passes: z.optional(wholeNumber(2, 30, 'number of passes')),
  stamps: z.optional(z.array(plannedStamp, { error: 'a list of stamps' })),
  windows: z.optional(stepWindows),
  needs: z.optional(z.array(oneOf('a milestone', milestones), { error: 'a list of milestones' })),
  grit: z.optional(wholeNumber(16, 5000, 'grit')),
  dusty: z.optional(yes),
  'clean air': z.optional(yes),
  fumes: z.optional(yes),
  'until right': z.optional(yes),
  cautions: z.optional(cautions),
  'only if': z.optional(condition),
  asks: z.optional(question),
  'minutes times': z.optional(minutesTimes),
  'try first': z.optional(trial),
});
export type StepForm = z.infer<typeof step>;

/** A finishing schedule as it is written, perhaps with products of its own. */
export const scheduleFile = group('a finishing schedule', {
  id,
  name: text('a name'),
  summary: text('what it gives, in a line'),
  sources,
  source: sourceName,
  products: z.optional(products),
  steps: z
    .array(step, { error: 'a list of steps' })
    .check(z.minLength(1, { error: 'a list of at least one step' })),
});
export type ScheduleFile = z.infer<typeof scheduleFile>;
