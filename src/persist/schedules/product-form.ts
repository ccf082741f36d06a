import * as z from 'zod/mini';
import {
  calendarDay,
  cautions,
  chemistry,
  climate,
  durationOf,
  group,
  id,
  percent,
  temperature,
  text,
  yes,
} from './fields.ts';
import { coat, sourceName, windows } from './window-form.ts';

/** A product as it is written: a generic class, or somebody's own can with the times of its label. */
export const product = group('a product', {
  name: text('a name'),
  class: text('a generic class, such as "waterborne polyurethane"'),
  dries: chemistry,
  'stated for': climate,
  source: sourceName,
  'needs air': z.optional(
    group('the air it needs', {
      from: z.optional(temperature),
      to: z.optional(temperature),
      'rh up to': z.optional(percent),
      source: z.optional(sourceName),
    }),
  ),
  coat: z.optional(coat),
  windows: z.optional(windows),
  cautions: z.optional(cautions),
  deadly: z.optional(yes),
  'rags self-heat': z.optional(yes),
  'acid hardens it': z.optional(yes),
  batch: z.optional(text('what the lid says, such as 24-117 B')),
  'opened on': z.optional(calendarDay),
  'shelf life': z.optional(calendarDay),
  'once opened': z.optional(durationOf('how long it keeps once it was opened, such as 180 d')),
});
export type ProductForm = z.infer<typeof product>;

export const products = z.record(id, product, { error: 'products by their ids' });

/** Publications by short names, or `common practice, no source`. */
export const sources = z.record(
  text('the short name of a source'),
  text('a publication, or "common practice, no source"'),
  {
    error: 'sources by their short names',
  },
);

/** A file of products that schedules can use. */
export const productsFile = group('a products file', { sources, products });
