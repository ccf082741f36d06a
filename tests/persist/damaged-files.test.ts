import { existsSync, readdirSync, statSync, unlinkSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { note, pieceAdded } from './facts.ts';
import {
  appendBench,
  contentsOf,
  idsOf,
  newFolder,
  openReader,
  openWriter,
  put,
  textOf,
  valueOf,
} from './places.ts';

const aside = 'bench.damaged-20261124-150640.json';

/** A store with three notes in it, of which the last was told last. */
async function threeNotes(): Promise<string> {
  const folder = newFolder();
  const store = await openWriter(folder);
  for (const id of ['a', 'b', 'c']) valueOf(appendBench(store, note(id)));
  store.close();
  return folder;
}

const withFact = (fact: unknown) => JSON.stringify({ recoat: 1, facts: [note('a'), fact] });

/** Each way in which a file can be damaged, made from a good one, and the words that say so. */
const damages: readonly (readonly [string, (good: string) => string | Buffer, string])[] = [
  ['empty', () => '', 'it is empty'],
  ['nothing but zero bytes', (good) => Buffer.alloc(good.length), 'nothing but zero bytes'],
  ['cut short', (good) => good.slice(0, -40), 'it is cut short'],
  [
    'cut short within a name',
    (good) => good.slice(0, good.indexOf('runner') + 3),
    'line 2: it is cut short',
  ],
  ['no JSON', (good) => good.replace('"facts":[', '"facts":[,'), 'line 1: it is not JSON'],
  ['no JSON in one fact', (good) => good.replace('"id":"b"', '"id":b'), 'line 3: it is not JSON'],
  ['something after its end', (good) => `${good}}`, 'it is not JSON'],
  ['a list', () => '[]', 'it does not hold an object'],
  ['null', () => 'null', 'it does not hold an object'],
  ['a number', () => '7', 'it does not hold an object'],
  ['without a form', () => '{"facts":[]}', '"recoat", the number of the file\'s form, is missing'],
  ['a form that is a word', () => '{"recoat":"1","facts":[]}', 'is missing or no whole number'],
  ['without facts', () => '{"recoat":1}', '"facts" is missing or no list'],
  ['facts that are no list', () => '{"recoat":1,"facts":{}}', '"facts" is missing or no list'],
  ['a fact that is null', () => withFact(null), 'fact 2: it is null, expected an object'],
  ['a fact of no kind', () => withFact({ id: 'x' }), 'fact 2: kind is missing'],
  [
    'a fact of an unknown kind',
    () => withFact({ ...note('x'), kind: 'note-writen' }),
    'kind is "note-writen", expected a kind of fact (nearest: note-written)',
  ],
  [
    'a fact of another file',
    () => withFact({ ...note('x'), kind: 'reading-taken', body: { tempC: 1, rh: 1 } }),
    'kind is "reading-taken"',
  ],
  [
    'a kind that every object has',
    () => withFact({ ...note('x'), kind: 'constructor' }),
    'kind is "constructor"',
  ],
  ['a wrong field', () => withFact({ ...note('x'), at: 'noon' }), 'at is "noon", expected number'],
  [
    'a moment that no clock shows',
    () => withFact({ ...note('x'), at: 1e300 }),
    'at is 1e+300, which does not fit',
  ],
  [
    'a missing field',
    () => withFact({ ...note('x'), body: { piece: 'p', step: null } }),
    'body.text is missing',
  ],
  [
    'an unknown field',
    () => withFact({ ...note('x'), body: { piece: 'p', step: null, text: '', colour: 'red' } }),
    'body has an unknown field "colour"',
  ],
  [
    'a wrong word deep inside',
    (good) => {
      const piece = JSON.stringify(pieceAdded('p')).replace('"spoils"', '"costs work"');
      return good.replace(
        JSON.stringify(note('b')),
        piece.replace('"loss":"costs work"', '"loss":"costs wrok"'),
      );
    },
    'line 3: fact 2: body.steps[0].windows[0].stretches[0].loss is "costs wrok", expected spoils, costs work, costs nothing (nearest: costs work)',
  ],
  [
    'edges nested without end',
    () => {
      const deep = '{"kind":"earliest","of":['.repeat(50_000) + ']}'.repeat(50_000);
      const piece = JSON.stringify(pieceAdded('p'));
      return `{"recoat":1,"facts":[${piece.replace('"loss":"costs work"', `"loss":"costs work","from":${deep}`)}]}`;
    },
    'nested too deep',
  ],
  [
    'bytes that are no text',
    (good) => Buffer.from(good.replace('runner', 'runn\xe9r'), 'latin1'),
    'bytes that are no text',
  ],
];

describe.each(damages)('a bench file that is %s', (_name, damage, words) => {
  const damagedStore = async () => {
    const folder = await threeNotes();
    const bytes = damage(textOf(folder, 'bench.json'));
    put(folder, 'bench.json', bytes);
    return { folder, bytes: Buffer.from(bytes).toString('latin1') };
  };

  it('is set aside, named, and replaced by the generation before when it is read', async () => {
    const { folder, bytes } = await damagedStore();
    const opened = await openReader(folder);
    expect(idsOf(opened.bench)).toEqual(['a', 'b']);
    expect(opened.notices).toHaveLength(1);
    expect(opened.notices[0]?.says).toContain(words);
    expect(opened.notices[0]?.says).toContain(`set aside as ${aside}`);
    expect(opened.notices[0]?.says).toContain('bench.prev.json was put in its place');
    expect(contentsOf(folder).get(join(folder, aside))).toBe(bytes);
    const again = await openReader(folder);
    expect(idsOf(again.bench)).toEqual(['a', 'b']);
    expect(again.notices).toEqual([]);
  });

  it('is mended by a writer that opens it, and work goes on', async () => {
    const { folder } = await damagedStore();
    const store = await openWriter(folder);
    expect(store.notices()[0]?.says).toContain(words);
    valueOf(appendBench(store, note('d')));
    expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b', 'd']);
  });
});

it('loses nothing that was confirmed when the file is damaged under a running writer', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  for (const id of ['a', 'b', 'c']) valueOf(appendBench(store, note(id)));
  put(folder, 'bench.json', '{"recoat":1,"fac');
  valueOf(appendBench(store, note('d')));
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b', 'c', 'd']);
  expect(existsSync(join(folder, aside))).toBe(true);
  expect(store.notices()[0]?.says).toContain('What recoat had in memory was put in its place.');
});

it('prefers the copy on the disk to its memory if others have written meanwhile', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  valueOf(appendBench(store, note('a')));
  const other = await openWriter(folder);
  for (const id of ['b', 'c', 'd']) valueOf(appendBench(other, note(id)));
  put(folder, 'bench.json', '');
  valueOf(appendBench(store, note('e')));
  expect(idsOf(valueOf(store.load()).bench)).toEqual(['a', 'b', 'c', 'e']);
});

it('keeps two damaged files of the same second apart', async () => {
  const folder = await threeNotes();
  put(folder, 'bench.json', 'first');
  await openReader(folder);
  put(folder, 'bench.json', 'second');
  await openReader(folder);
  expect(textOf(folder, aside)).toBe('first');
  expect(textOf(folder, 'bench.damaged-20261124-150640-2.json')).toBe('second');
});

it('brings back a file that is missing', async () => {
  const folder = await threeNotes();
  unlinkSync(join(folder, 'bench.json'));
  const opened = await openReader(folder);
  expect(idsOf(opened.bench)).toEqual(['a', 'b']);
  expect(opened.notices[0]?.says).toContain(
    'bench.json is missing. bench.prev.json was put in its place.',
  );
});

it('brings back a store that was emptied under a running writer', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  for (const id of ['a', 'b']) valueOf(appendBench(store, note(id)));
  for (const name of ['bench.json', 'bench.prev.json']) unlinkSync(join(folder, name));
  valueOf(appendBench(store, note('c')));
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b', 'c']);
  expect(store.notices()[0]?.says).toContain('bench.json is missing.');
});

it('starts empty, and says so, only if no good copy is left', async () => {
  const folder = newFolder();
  put(folder, 'bench.json', 'nonsense');
  put(folder, 'bench.prev.json', 'nonsense too');
  const opened = await openReader(folder);
  expect(opened.bench).toEqual([]);
  expect(opened.notices[0]?.says).toContain('There is no good earlier copy, so it starts empty.');
  expect(textOf(folder, aside)).toBe('nonsense');
  expect(textOf(folder, 'bench.prev.json')).toBe('nonsense too');
});

it('mends conditions, pings and settings in the same way', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  for (const helper of [true, false]) {
    valueOf(store.changeSettings((now) => ({ settings: { ...now, helper }, result: null })));
  }
  store.close();
  for (const name of ['conditions', 'pings', 'settings']) put(folder, `${name}.json`, '{');
  const opened = await openReader(folder);
  expect(opened.settings.helper).toBe(true);
  expect(opened.notices.map(({ file }) => file)).toEqual(
    ['conditions', 'pings', 'settings'].map((name) => join(folder, `${name}.json`)),
  );
  const kept = readdirSync(folder).filter((name) => name.includes('.damaged-'));
  expect(kept).toEqual(
    ['conditions', 'pings', 'settings'].map((name) => `${name}.damaged-20261124-150640.json`),
  );
});

it('takes a file that somebody edited by hand and that still fits', async () => {
  const folder = await threeNotes();
  const edited = JSON.stringify(JSON.parse(textOf(folder, 'bench.json')), undefined, 2).replace(
    '"runner replaced"',
    '"runner waxed"',
  );
  put(folder, 'bench.json', `\uFEFF${edited}`);
  const opened = await openReader(folder);
  expect(opened.notices).toEqual([]);
  expect(opened.bench[0]).toEqual(note('a', 'runner waxed'));
  expect(textOf(folder, 'bench.json')).toBe(`\uFEFF${edited}`);
  const store = await openWriter(folder);
  valueOf(appendBench(store, note('d')));
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b', 'c', 'd']);
});

it('sees what somebody changed within a file under a running writer, though it is as long as before', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  valueOf(appendBench(store, note('a', 'runner waxed')));
  const path = join(folder, 'bench.json');
  // A file that is written over keeps its number, and its time may stand still for a few thousandths.
  const later = statSync(path).mtimeMs / 1000 + 1;
  put(folder, 'bench.json', textOf(folder, 'bench.json').replace('waxed', 'sawed'));
  utimesSync(path, later, later);
  valueOf(appendBench(store, note('b')));
  expect((await openReader(folder)).bench).toEqual([note('a', 'runner sawed'), note('b')]);
});

it('drops a fact that is in the file twice', async () => {
  const folder = newFolder();
  put(
    folder,
    'bench.json',
    JSON.stringify({ recoat: 1, facts: [note('a'), note('b'), note('a')] }),
  );
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b']);
});

it('refuses to store a fact that could not be read back', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  expect(() => appendBench(store, { ...note('a'), at: Number.NaN })).toThrow('at is');
  expect(valueOf(store.load()).bench).toEqual([]);
});
