import { linkSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { duplicate } from '../../src/persist/file/durable.ts';
import { note } from './facts.ts';
import { appendBench, newFolder, openWriter, put, textOf, valueOf } from './places.ts';

it('never writes into a file in place, also in a terminal that was started from a snap', async () => {
  vi.stubEnv('SNAP', '/snap/terminal/1');
  const folder = newFolder();
  const store = await openWriter(folder);
  const inodeOf = (name: string) => statSync(join(folder, name)).ino;
  for (const id of ['a', 'b', 'c']) {
    valueOf(appendBench(store, note(id)));
  }
  expect(inodeOf('bench.json')).not.toBe(inodeOf('bench.prev.json'));
  expect(JSON.parse(textOf(folder, 'bench.prev.json')).facts).toEqual([note('a'), note('b')]);
  expect(process.env.SNAP).toBe('/snap/terminal/1');
  vi.unstubAllEnvs();
});

it("puts one fact on a line, and nothing of conf's own", async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  for (const id of ['a', 'b']) valueOf(appendBench(store, note(id)));
  const lines = textOf(folder, 'bench.json').split('\n');
  expect(lines).toEqual([
    '{"recoat":1,"facts":[',
    `${JSON.stringify(note('a'))},`,
    JSON.stringify(note('b')),
    expect.stringMatching(/^\],"sum":"[0-9a-f]{8}"\}$/),
    '',
  ]);
});

it('can give a file a second name that it has already', () => {
  const folder = newFolder();
  const [one, other] = [join(folder, 'one'), join(folder, 'other')];
  put(folder, 'one', 'x');
  linkSync(one, other);
  duplicate(one, other);
  expect(readdirSync(folder)).toEqual(['one', 'other']);
});
