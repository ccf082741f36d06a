import { expect, it } from 'vitest';
import { outputOf, start } from './children/child.ts';
import { programs } from './children/programs.ts';
import { note } from './facts.ts';
import { appendBench, newFolder, openWriter, valueOf } from './places.ts';

it('reads a store without loading conf, schemas or the lock', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  for (const id of ['a', 'b']) valueOf(appendBench(store, note(id)));
  valueOf(store.changeSettings((now) => ({ settings: { ...now, bell: 'never' }, result: null })));
  const told = JSON.parse(await outputOf(start(programs.whatReadingLoads, [folder]))) as {
    facts: number;
    loaded: readonly string[];
  };
  expect(told.facts).toBe(2);
  expect(told.loaded).toContain('persist/open-store.ts');
  const heavy = /node_modules\/(?!leven\/)|node:sqlite|persist\/(schemas|lock|writing)|careful/;
  expect(told.loaded.filter((name) => heavy.test(name))).toEqual([]);
});
