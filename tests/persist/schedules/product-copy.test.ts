import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { loadSchedules, productCopyText } from '../../../src/persist/schedules/parsing.ts';

const folder = join(
  dirname(fileURLToPath(import.meta.url)),
  '..',
  '..',
  '..',
  'templates',
  'products',
);
const files = readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8'));
const all = loadSchedules(files.map((text, index) => ({ path: `${index}.yaml`, text })));
const copyOf = (id: string): string | undefined =>
  files
    .map((text) => productCopyText(text, id, 'my-own', 'schema.json') ?? undefined)
    .find((text) => text !== undefined);

test.each(Object.keys(all.products))('a copy of %s is right as it is, and says the same', (id) => {
  const text = copyOf(id) ?? '';
  const copied = loadSchedules([{ path: 'my-own.yaml', text, own: true }]);
  expect(copied.problems).toEqual([]);
  expect(copied.products['my-own']).toEqual({ ...all.products[id], id: 'my-own' });
  expect(copied.sources['my-own']).toEqual(all.sources[id]);
});

test('what a file does not have is copied from none', () => {
  expect(copyOf('no-such-product')).toBeUndefined();
});
