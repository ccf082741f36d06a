import { copyFileSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { note } from './facts.ts';
import {
  appendBench,
  idsOf,
  newFolder,
  openReader,
  openWriter,
  problemOf,
  put,
  textOf,
  valueOf,
} from './places.ts';

const leaving = [{ year: 2025, facts: [note('a'), note('b')] }];

/** A store whose bench had notes a, b, c, of which a and b moved to 2025. */
async function movedStore() {
  const folder = newFolder();
  const store = await openWriter(folder);
  valueOf(appendBench(store, ...['a', 'b', 'c'].map((id) => note(id))));
  copyFileSync(join(folder, 'bench.json'), join(folder, 'bench before.json'));
  valueOf(store.moveToHistory(leaving));
  return { folder, store };
}

it('has the facts of a year in a file of the same form as the bench', async () => {
  const { folder } = await movedStore();
  expect(JSON.parse(textOf(folder, 'history/2025.json'))).toMatchObject({
    recoat: 1,
    facts: leaving[0]?.facts,
  });
  const opened = await openReader(folder);
  expect(idsOf(opened.bench)).toEqual(['c']);
  expect(opened.historyYears()).toEqual([2025]);
  expect(valueOf(await opened.readHistory(2025)).facts).toEqual(leaving[0]?.facts);
});

it("is not read at start: damage in it is nobody's business till the year is asked for", async () => {
  const { folder, store } = await movedStore();
  valueOf(store.moveToHistory([{ year: 2025, facts: [note('c')] }]));
  store.close();
  put(folder, 'history/2025.json', 'damaged');
  const opened = await openReader(folder);
  expect(opened.notices).toEqual([]);
  expect(textOf(folder, 'history/2025.json')).toBe('damaged');
  const history = valueOf(await opened.readHistory(2025));
  expect(idsOf(history.facts)).toEqual(['a', 'b']);
  expect(history.notices[0]?.says).toContain(
    'set aside as history/2025.damaged-20261124-150640.json. 2025.prev.json was put in its place.',
  );
  expect(readdirSync(join(folder, 'history'))).toContain('2025.damaged-20261124-150640.json');
});

it('has everything once when the mover died after the year was written and before the bench was', async () => {
  const { folder, store } = await movedStore();
  copyFileSync(join(folder, 'bench before.json'), join(folder, 'bench.json'));
  expect(idsOf(valueOf(store.load()).bench)).toEqual(['a', 'b', 'c']);
  valueOf(store.moveToHistory(leaving));
  expect(idsOf(valueOf(store.load()).bench)).toEqual(['c']);
  expect(idsOf(valueOf(store.readHistory(2025)).facts)).toEqual(['a', 'b']);
});

it('keeps everything on the bench if the year can not be written', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  valueOf(appendBench(store, note('a'), note('b')));
  put(folder, 'history', 'a file where the folder should be');
  expect(problemOf(store.moveToHistory(leaving)).kind).toBe('unreadable');
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b']);
});

it('touches neither bench nor year if the year is of a newer form', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  valueOf(appendBench(store, note('a')));
  mkdirSync(join(folder, 'history'));
  put(folder, 'history/2025.json', '{"recoat":2}');
  expect(problemOf(store.moveToHistory(leaving)).kind).toBe('newer');
  expect(textOf(folder, 'history/2025.json')).toBe('{"recoat":2}');
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a']);
});

it('knows a year of which only the generation before is left', async () => {
  const { folder, store } = await movedStore();
  copyFileSync(join(folder, 'history/2025.json'), join(folder, 'history/2024.prev.json'));
  expect(store.historyYears()).toEqual([2024, 2025]);
  const history = valueOf(store.readHistory(2024));
  expect(idsOf(history.facts)).toEqual(['a', 'b']);
  expect(history.notices).toHaveLength(1);
  expect(existsSync(join(folder, 'history/2024.json'))).toBe(true);
});
