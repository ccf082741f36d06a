import { mkdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { benchFile } from '../../src/persist/folder/names.ts';
import { documentText, type StoredDocument } from '../../src/persist/writing/conf-file.ts';
import { replaceFile } from '../../src/persist/writing/replace-file.ts';
import { benchOfSize, claim, note } from './facts.ts';
import { mountingFails, newDisk } from './mounted.ts';
import {
  appendBench,
  contentsOf,
  idsOf,
  newFolder,
  openReader,
  openWriter,
  problemOf,
  put,
  textOf,
  valueOf,
} from './places.ts';

describe('a write of which the disk takes only part', () => {
  const document: StoredDocument = { recoat: 1, facts: [note('a'), note('b')] };
  const path = (folder: string) => join(folder, 'bench.json');
  const whole = (folder: string) => () => writeFileSync(path(folder), documentText(document));
  const partly = (folder: string) => () => {
    rmSync(path(folder), { force: true });
    whole(folder)();
    truncateSync(path(folder), 50);
  };

  it('is undone and said to be for want of room', () => {
    const folder = newFolder();
    put(folder, 'bench.json', 'the generation before');
    const problem = problemOf(replaceFile(folder, benchFile, document, partly(folder)));
    expect(problem.kind).toBe('full');
    expect(problem.says).toMatch(
      /^Not stored: there is no room left for .*; the disk took only part of it/,
    );
    expect(textOf(folder, 'bench.json')).toBe('the generation before');
  });

  it('leaves no file where there was none', () => {
    const folder = newFolder();
    expect(problemOf(replaceFile(folder, benchFile, document, partly(folder))).kind).toBe('full');
    expect([...contentsOf(folder).keys()]).toEqual([]);
  });

  it('is not told by the length alone', () => {
    const folder = newFolder();
    put(folder, 'bench.json', 'the generation before');
    const zeros = () => {
      rmSync(path(folder));
      put(folder, 'bench.json', Buffer.alloc(documentText(document).length));
    };
    expect(problemOf(replaceFile(folder, benchFile, document, zeros)).kind).toBe('full');
    expect(textOf(folder, 'bench.json')).toBe('the generation before');
  });

  it('is not what a whole write is taken for', () => {
    const folder = newFolder();
    valueOf(replaceFile(folder, benchFile, document, whole(folder)));
    expect(textOf(folder, 'bench.json')).toBe(documentText(document));
  });
});

/** A folder in the way of the name under which the generation before is made. */
const hinder = (folder: string, name: string) => mkdirSync(join(folder, `${name}.prev.json.part`));

describe('a change that fails before anything is written', () => {
  it('puts no earlier generation in the place of the one in use', async () => {
    const folder = newFolder();
    const store = await openWriter(folder);
    for (const id of ['a', 'b', 'c']) valueOf(appendBench(store, note(id)));
    hinder(folder, 'bench');
    expect(problemOf(appendBench(store, note('d'))).kind).toBe('unwritable');
    expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b', 'c']);
  });

  it('is not brought back from memory by the mending of a file that it had written', async () => {
    const folder = newFolder();
    const store = await openWriter(folder);
    for (const id of ['a', 'b']) valueOf(appendBench(store, note(id)));
    valueOf(store.change(() => ({ append: { pings: [claim('c1')] }, result: null })));
    hinder(folder, 'pings');
    const append = { bench: [note('refused')], pings: [claim('c2')] };
    expect(problemOf(store.change(() => ({ append, result: null }))).kind).toBe('unwritable');
    put(folder, 'bench.json', 'damaged');
    expect(idsOf(valueOf(store.load()).bench)).not.toContain('refused');
  });
});

describe.skipIf(mountingFails)(
  `a disk that fills up${mountingFails ? `: ${mountingFails}` : ''}`,
  () => {
    const facts = benchOfSize(300_000);

    it.each([0, 4, 8, 40, 120, 200, 280, 296, 304, 320, 400].map((kilobytes) => kilobytes * 1024))(
      'keeps the record whole with %d bytes left',
      async (left) => {
        const { folder, fillUpTo, makeRoom } = newDisk(2 * 1024 * 1024);
        const store = await openWriter(folder);
        valueOf(appendBench(store, ...facts.slice(0, -1)));
        valueOf(appendBench(store, ...facts.slice(-1)));
        fillUpTo(left);

        const told = appendBench(store, note('told on the full disk'));
        if (!told.ok) expect(told.problem.kind).toBe('full');
        const opened = await openReader(folder);
        expect(opened.notices).toEqual([]);
        expect(opened.bench).toEqual(told.ok ? [...facts, note('told on the full disk')] : facts);

        makeRoom();
        valueOf(appendBench(store, note('told with room again')));
        expect((await openReader(folder)).bench.at(-1)).toEqual(note('told with room again'));
      },
    );

    it('takes back the first file of a change if the second finds no room', async () => {
      const { folder } = newDisk(1024 * 1024);
      const store = await openWriter(folder);
      valueOf(appendBench(store, note('a')));
      const pings = Array.from({ length: 5_000 }, (_, index) => claim(`c${index}`));
      const both = store.change(() => ({ append: { bench: [note('b')], pings }, result: null }));
      expect(problemOf(both).kind).toBe('full');
      const opened = await openReader(folder);
      expect(idsOf(opened.bench)).toEqual(['a']);
      expect(opened.pings).toEqual([]);
      valueOf(appendBench(store, note('c')));
      expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'c']);
    });
  },
);
