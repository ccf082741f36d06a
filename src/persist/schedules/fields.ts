import * as z from 'zod/mini';
import type { Chemistry } from '../../tracker/trade/index.ts';
import { isCalendarDay, readDuration } from '../../tracker/time/index.ts';

/**
 * The small fields that schedule and products files are made of. Every message is written as what the field takes
 * ("a length of time such as 2 h"), because that is what a person is told who wrote something else.
 */

const listing = ': ';

/** A group of fields in which nothing else may stand. `what` names it: `a step`. */
export function group<const Shape extends z.core.$ZodLooseShape>(what: string, shape: Shape) {
  const names = Object.keys(shape);
  const fields = `${what}${listing}${names.join(', ')}`;
  const byFields = `${what} by its fields: ${names.slice(0, 3).join(', ')}${names.length > 3 ? ' and so on' : ''}`;
  return z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? fields : byFields),
  });
}

/** What `group` and `named` leave in the message about an unknown field: what it would belong to, and the fields there are. */
export function listedFields(message: string): {
  readonly what: string;
  readonly names: readonly string[];
} {
  const cut = message.indexOf(listing);
  if (cut < 0) return { what: message, names: [] };
  return { what: message.slice(0, cut), names: message.slice(cut + listing.length).split(', ') };
}

/** Fields with names from a list, each holding the same kind of thing, none of them required. */
export function named<const Name extends string, Value extends z.core.$ZodType>(
  what: string,
  names: readonly Name[],
  value: Value,
) {
  const fields = `${what}${listing}${names.join(', ')}`;
  return z.partialRecord(z.enum(names), value, {
    error: (issue) => (issue.code === 'invalid_type' ? what : fields),
  });
}

export const oneOf = <const Name extends string>(what: string, names: readonly Name[]) =>
  z.enum(names, { error: what });

const longestLine = 200;

export const text = (what: string) =>
  z.string({ error: what }).check(
    z.refine((words) => words.trim() !== '' && words.length <= longestLine, {
      error: `${what}, 1 to ${longestLine} letters`,
    }),
  );

export const yes = z.boolean({ error: 'true or false' });

export const numberFrom = (least: number, most: number, what: string) =>
  z
    .number({ error: `${what}, ${least} to ${most}` })
    .check(
      z.minimum(least, { error: `${what}, ${least} to ${most}` }),
      z.maximum(most, { error: `${what}, ${least} to ${most}` }),
    );

export const wholeNumber = (least: number, most: number, what: string) =>
  numberFrom(least, most, what).check(
    z.refine(Number.isInteger, { error: `a whole ${what}, ${least} to ${most}` }),
  );

const idForm = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Name of a thing within files: small letters, figures and dashes. */
export const id = z
  .string({ error: 'an id such as sand-120' })
  .check(
    z.regex(idForm, { error: 'an id of small letters, figures and dashes, such as sand-120' }),
  );

/** A length of time in milliseconds. A bare number is refused: in a file it would not show its unit. */
export const durationOf = (words: string) =>
  z.pipe(
    z.string({ error: words }).check(
      z.refine((given) => /[a-z]/i.test(given) && readDuration(given).ok, { error: words }),
      z.describe('A length of time with its unit: 45 min, 2 h, 1 h 30, 14 d.'),
    ),
    z.transform((given) => {
      const reading = readDuration(given);
      if (!reading.ok) throw new Error(`passed the check but is no length of time: ${given}`);
      return reading.ms;
    }),
  );

export const duration = durationOf('a length of time with its unit, such as 45 min, 2 h or 14 d');

/** A length of time, or one for each kind of wood. */
export const durationByWood = z.union([
  duration,
  group('a length of time by wood', { soft: duration, hard: duration }),
]);

const climateForm = /^(-?\d{1,2}(?:\.\d)?) ?([CF]) (\d{1,3}) ?%$/;
const climateWords = 'a temperature and a relative humidity, such as 23 C 50 % or 70 F 50 %';

const dayWords = 'a day, such as 2027-06-30';

/** A day of the calendar, year first. */
export const calendarDay = z
  .string({ error: dayWords })
  .check(z.refine(isCalendarDay, { error: dayWords }), z.describe('A day: 2027-06-30.'));

/** The air a label's figures are stated for. */
export const climate = z.pipe(
  z.string({ error: climateWords }).check(
    z.refine(
      (words) => {
        const read = climateForm.exec(words);
        return read !== null && Number(read[3]) <= 100;
      },
      { error: climateWords },
    ),
    z.describe('Temperature and relative humidity that the times are stated for: 23 C 50 %.'),
  ),
  z.transform((words) => {
    const [, degrees, unit, rh] = climateForm.exec(words) ?? [];
    const value = Number(degrees);
    const tempC = unit === 'F' ? Math.round(((value - 32) * 50) / 9) / 10 : value;
    return { tempC, rh: Number(rh) };
  }),
);

const temperatureForm = /^(-?\d{1,3}(?:\.\d)?) ?([CF])$/;
const temperatureWords = 'a temperature with its letter, such as 10 C or 50 F';

/** A temperature, in degrees Celsius. */
export const temperature = z.pipe(
  z
    .string({ error: temperatureWords })
    .check(
      z.regex(temperatureForm, { error: temperatureWords }),
      z.describe('A temperature: 10 C, 50 F.'),
    ),
  z.transform((words) => {
    const [, degrees, unit] = temperatureForm.exec(words) ?? [];
    return unit === 'F' ? Math.round(((Number(degrees) - 32) * 50) / 9) / 10 : Number(degrees);
  }),
);

const percentForm = /^(\d{1,3}) ?%$/;
const percentWords = 'a relative humidity such as 85 %';

export const percent = z.pipe(
  z.string({ error: percentWords }).check(
    z.refine((words) => Number(percentForm.exec(words)?.[1] ?? 101) <= 100, {
      error: percentWords,
    }),
    z.describe('A relative humidity: 85 %.'),
  ),
  z.transform((words) => Number(percentForm.exec(words)?.[1])),
);

export const chemistries = [
  'waterborne',
  'oxidative',
  'evaporative',
  'two-part',
  'moisture-cure',
  'glue',
  'reaction',
] as const satisfies readonly Chemistry[];

export const chemistry = oneOf('a way of drying', chemistries);

/** Cautions: short, ours, said before a product or a step is used. */
export const cautions = z.array(text('a caution'), { error: 'a list of cautions' });
