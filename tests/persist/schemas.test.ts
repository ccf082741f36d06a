import * as z from 'zod/mini';
import { expect, it } from 'vitest';
import { matches } from '../../src/persist/schemas/same.ts';

type Thing = { readonly id: string; readonly grit?: number; readonly of: readonly ('a' | 'b')[] };
const fields = {
  id: z.string(),
  grit: z.exactOptional(z.number()),
  of: z.array(z.enum(['a', 'b'])),
};

it('lets a schema differ in nothing from the type of the tracker', () => {
  const same = z.strictObject(fields);
  matches<Thing, z.infer<typeof same>>(true);

  const _withMore = z.strictObject({ ...fields, more: z.exactOptional(z.string()) });
  // @ts-expect-error a field that the type lacks
  matches<Thing, z.infer<typeof _withMore>>(true);

  const _withLess = z.strictObject({ id: fields.id, of: fields.of });
  // @ts-expect-error an optional field that the schema lacks
  matches<Thing, z.infer<typeof _withLess>>(true);

  const _withUndefined = z.strictObject({ ...fields, grit: z.optional(z.number()) });
  // @ts-expect-error a field that may be there and undefined, which the type forbids
  matches<Thing, z.infer<typeof _withUndefined>>(true);

  const _withMoreWords = z.strictObject({ ...fields, of: z.array(z.enum(['a', 'b', 'c'])) });
  // @ts-expect-error a word that the type lacks
  matches<Thing, z.infer<typeof _withMoreWords>>(true);

  const _withFewerWords = z.strictObject({ ...fields, of: z.array(z.enum(['a'])) });
  // @ts-expect-error a word that the schema lacks
  matches<Thing, z.infer<typeof _withFewerWords>>(true);

  expect(same.safeParse({ id: 'x', of: ['a'] }).success).toBe(true);
});
