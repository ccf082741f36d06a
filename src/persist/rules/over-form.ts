import * as z from 'zod/mini';
import { stepClasses, firsts, verdicts } from '../../tracker/trade/index.ts';
import { duration, group, named, oneOf, text } from '../schedules/fields.ts';
import { sources } from '../schedules/product-form.ts';
import { sourceName } from '../schedules/window-form.ts';

export const oneOrMore = (what: string) =>
  z.union([text(what), z.array(text(what), { error: `${what}, or a list of them` })]);

const overRow = group('a row', {
  below: oneOrMore('a product class or a group'),
  above: oneOrMore('a product class, a group, or "the same"'),
  verdict: oneOf('a verdict', verdicts),
  first: z.optional(oneOf('what must come first', firsts)),
  wait: z.optional(duration),
  why: text('why'),
  instead: z.optional(text('what to do instead')),
  source: sourceName,
});

/** The file of what may go over what. */
export const overFile = group('a table of what may go over what', {
  sources,
  usual: named('product classes by step class', stepClasses, text('a product class')),
  groups: z.record(
    text('the name of a group'),
    z.array(text('a product class or a group'), {
      error: 'a list of product classes and groups',
    }),
    { error: 'groups of product classes by their names' },
  ),
  rows: z.array(overRow, { error: 'a list of rows' }),
});
export type OverFile = z.infer<typeof overFile>;
