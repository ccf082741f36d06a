import * as fc from 'fast-check';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { presentForm } from '../../../src/persist/file/form.ts';
import { ownName } from '../../../src/persist/transfer/exported.ts';
import type { FactStore } from '../../../src/persist/index.ts';
import {
  exportText,
  gather,
  putIn,
  readExport,
  type Exported,
} from '../../../src/persist/transfer/index.ts';
import { standardSettings, settings as table } from '../../../src/tracker/settings/index.ts';
import type { BenchFact } from '../../../src/tracker/bench/index.ts';
import { anyBenchFact, anyConditionsFact, anyPingFact } from '../any-fact.ts';
import { note } from '../facts.ts';
import {
  appendBench,
  contentsOf,
  idsOf,
  newFolder,
  openReader,
  openWriter,
  problemOf,
  put,
  valueOf,
} from '../places.ts';

// eslint-disable-next-line no-control-regex -- the point is to find them
const acting = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/;

const list = <Fact extends { readonly id: string }>(fact: fc.Arbitrary<Fact>) =>
  fc.uniqueArray(fact, { maxLength: 6, selector: ({ id }) => id });

/** One value of each setting that has a list of them. */
const anySettings = fc.record(
  Object.fromEntries(
    Object.entries(table).flatMap(([name, { choices }]) =>
      typeof choices === 'string' ? [] : [[name, fc.constantFrom(...choices)]],
    ),
  ),
  { requiredKeys: [] },
);

const anyStore = fc.record({
  bench: list(anyBenchFact),
  conditions: list(anyConditionsFact),
  pings: list(anyPingFact),
  years: fc.dictionary(fc.constantFrom('1999', '2025', '2026'), list(anyBenchFact), { maxKeys: 3 }),
  settings: anySettings,
  beside: fc.dictionary(fc.constantFrom('of tomorrow', 'says', 'line'), fc.jsonValue()),
  own: fc.dictionary(
    fc.string({ unit: 'binary', maxLength: 6 }).map((name) => `a${name.replace(/\W/gu, 'é')}.yaml`),
    fc.string({ unit: 'grapheme-composite', maxLength: 30 }),
    { maxKeys: 2 },
  ),
});

async function fill(
  folder: string,
  store: typeof anyStore extends fc.Arbitrary<infer T> ? T : never,
) {
  const writer = await openWriter(folder);
  valueOf(
    writer.changeSettings(() => ({
      settings: { ...standardSettings, ...store.settings },
      beside: store.beside,
      result: null,
    })),
  );
  for (const [year, facts] of Object.entries(store.years))
    valueOf(writer.moveToHistory([{ year: Number(year), facts }]));
  const { bench, conditions, pings } = store;
  valueOf(writer.change(() => ({ append: { bench, conditions, pings }, result: null })));
  writer.close();
  mkdirSync(join(folder, 'schedules'));
  for (const [name, text] of Object.entries(store.own))
    writeFileSync(join(folder, 'schedules', name), text);
}

async function everythingIn(folder: string) {
  const opened = await openReader(folder);
  const years = new Map<number, readonly BenchFact[]>();
  for (const year of opened.historyYears())
    years.set(year, valueOf(await opened.readHistory(year)).facts);
  const { bench, conditions, pings, settings } = opened;
  const { exported } = valueOf(await gather(opened, join(folder, 'schedules')));
  return { bench, conditions, pings, settings, years, raw: exported.settings, own: exported.own };
}

const exportOf = async (folder: string): Promise<string> =>
  exportText(
    presentForm.current,
    valueOf(await gather(await openReader(folder), join(folder, 'schedules'))).exported,
  );

it('brings any store back, fact for fact and setting for setting, and a second time changes nothing', async () => {
  await fc.assert(
    fc.asyncProperty(anyStore, async (store) => {
      const [from, to] = [newFolder(), newFolder()];
      await fill(from, store);
      const text = await exportOf(from);
      expect(text).not.toMatch(acting);
      const coming = valueOf(readExport('x.json', Buffer.from(text), presentForm));
      const writer = await openWriter(to);
      const putInto = () => valueOf(putIn(writer, join(to, 'schedules'), coming, 'x.json'));
      putInto();
      expect(await everythingIn(to)).toEqual(await everythingIn(from));
      expect(await exportOf(to)).toBe(text);
      const before = contentsOf(to);
      expect(putInto().changed).toBe(false);
      expect(contentsOf(to)).toEqual(before);
      writer.close();
    }),
    { numRuns: 40 },
  );
}, 60_000);

const notes = (...ids: readonly string[]) => ids.map((id) => note(id));
const comingWith = (given: Partial<Exported>): Exported => ({
  bench: [],
  conditions: [],
  pings: [],
  settings: {},
  years: new Map(),
  own: new Map(),
  ...given,
});

it('puts in nothing where the store holds an older state of the record', async () => {
  const folder = newFolder();
  const writer = await openWriter(folder);
  valueOf(appendBench(writer, ...notes('a', 'b')));
  const before = contentsOf(folder);
  // Since then a left the bench, and c was told.
  const coming = comingWith({ bench: notes('b', 'c'), years: new Map([[2025, notes('a')]]) });
  const { says } = problemOf(putIn(writer, join(folder, 'schedules'), coming, 'x.json'));
  expect(says).toContain('the store holds an older state of the same record');
  expect(contentsOf(folder)).toEqual(before);
});

it('puts no bench in where another recoat wrote to it meanwhile', async () => {
  const folder = newFolder();
  const [writer, other] = [await openWriter(folder), await openWriter(folder)];
  const store: FactStore = {
    ...writer,
    load: () => {
      const loaded = writer.load();
      valueOf(appendBench(other, note('meanwhile')));
      return loaded;
    },
  };
  const coming = comingWith({ bench: notes('a') });
  expect(problemOf(putIn(store, join(folder, 'schedules'), coming, 'x.json')).kind).toBe('busy');
  expect(idsOf((await openReader(folder)).bench)).toEqual(['meanwhile']);
});

it('takes a fact once that somebody copied within the file', () => {
  const text = exportText(presentForm.current, comingWith({ bench: notes('a', 'b', 'a') }));
  const read = valueOf(readExport('x.json', Buffer.from(text), presentForm));
  expect(idsOf(read.bench)).toEqual(['a', 'b']);
});

it('has the settings that were chosen: none, or those that stand in for damaged ones', async () => {
  const folder = newFolder();
  const writer = await openWriter(folder);
  const own = join(folder, 'schedules');
  expect(valueOf(await gather(await openReader(folder), own)).exported.settings).toEqual({});
  valueOf(writer.changeSettings((now) => ({ settings: { ...now, helper: true }, result: null })));
  const opened = await openReader(folder);
  put(folder, 'settings.json', 'damaged');
  expect(valueOf(await gather(opened, own)).exported.settings).toEqual(opened.settings);
});

it('takes nothing of a file of which any byte was changed', async () => {
  const folder = newFolder();
  const [store] = fc.sample(
    anyStore.filter(({ bench, conditions }) => bench.length > 1 && conditions.length > 0),
    { numRuns: 1, seed: 4 },
  );
  if (store === undefined) throw new Error('no store');
  await fill(folder, store);
  const bytes = Buffer.from(await exportOf(folder));
  fc.assert(
    fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (at, flip) => {
      const changed = Buffer.from(bytes);
      changed[at] = (changed[at] ?? 0) ^ flip;
      const read = readExport('x.json', changed, presentForm);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.problem.says).toMatch(/^Not imported: x\.json /);
    }),
    { numRuns: 300 },
  );
  for (let length = 0; length < bytes.length; length += 97)
    expect(readExport('x.json', bytes.subarray(0, length), presentForm).ok).toBe(false);
});

it('never throws on any JSON, and reads no name that leads elsewhere', () => {
  const part = fc.oneof(fc.jsonValue(), fc.record({ facts: fc.array(fc.jsonValue()) }));
  const parts = fc.dictionary(
    fc.constantFrom('bench', 'pings', 'conditions', 'settings', 'schedules', 'history/2025', 'x'),
    part,
  );
  fc.assert(
    fc.property(
      fc.oneof(fc.jsonValue(), fc.record({ recoat: fc.integer(), export: parts })),
      (json) => {
        const read = readExport('x.json', Buffer.from(JSON.stringify(json)), presentForm);
        if (!read.ok) expect(read.problem.says).toMatch(/^Not imported: /);
      },
    ),
  );
  for (const name of [
    '../x.yaml',
    '/x.yaml',
    'a/b.yaml',
    'a\\b.yaml',
    'c:x.yaml',
    '.yaml',
    'x.yml\0',
    'x',
  ])
    expect(ownName.test(name), name).toBe(false);
  for (const name of ['x.yaml', 'my own.yml', 'größe.yaml']) expect(ownName.test(name)).toBe(true);
});
