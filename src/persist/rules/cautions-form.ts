import * as z from 'zod/mini';
import { leadStandings, stepClasses } from '../../tracker/trade/index.ts';
import { group, id, numberFrom, oneOf, text, wholeNumber, yes } from '../schedules/fields.ts';
import { sources } from '../schedules/product-form.ts';
import { sourceName } from '../schedules/window-form.ts';

const list = (what: string) => z.array(text(what), { error: `a list: ${what}` });
const productList = list('a product class, or a group of over.yaml');
const chemicalName = text('a chemical of this file');

const chemical = group('a chemical', {
  products: productList,
  words: list('a word in the name of a step'),
  'ended by': z.array(chemicalName, { error: 'a list of chemicals' }),
  'gone when dry': z.optional(yes),
});

const pair = group('a pair', {
  of: z.tuple([chemicalName, chemicalName], { error: 'two chemicals of this file' }),
  makes: text('what comes of it'),
  instead: text('what to do instead'),
  source: sourceName,
});

const neutraliser = group('a neutraliser', {
  left: chemicalName,
  right: text('what takes it out'),
  wrong: z.array(chemicalName, { error: 'a list of chemicals' }),
  because: text('why'),
  takes: z.optional(
    group('an amount', { of: text('of what'), grams: numberFrom(0, 1000, 'grams to one gram') }),
  ),
  source: sourceName,
});

const caution = group('a caution', {
  id,
  steps: z.optional(
    z.array(oneOf('a step class', stepClasses), { error: 'a list of step classes' }),
  ),
  products: z.optional(productList),
  words: z.optional(list('a word in the name of a step')),
  fumes: z.optional(yes),
  lead: z.optional(oneOf('how the piece stands with lead', leadStandings)),
  'unless said': z.optional(list('a word of a caution')),
  deadly: z.optional(yes),
  says: text('the caution'),
  source: sourceName,
});

/** The file of cautions by step class, product class and history. */
export const cautionsFile = group('a file of cautions', {
  sources,
  'lead before': wholeNumber(1900, 2100, 'year'),
  chemicals: z.record(text('the name of a chemical'), chemical, {
    error: 'chemicals by their names',
  }),
  pairs: z.array(pair, { error: 'a list of pairs' }),
  neutralisers: z.array(neutraliser, { error: 'a list of neutralisers' }),
  cautions: z.array(caution, { error: 'a list of cautions' }),
});
export type CautionsFile = z.infer<typeof cautionsFile>;
