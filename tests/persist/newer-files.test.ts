import { describe, expect, it } from 'vitest';
import { openForWriting, openStore } from '../../src/persist/index.ts';
import { note } from './facts.ts';
import {
  appendBench,
  contentsOf,
  fixedClock,
  newFolder,
  openWriter,
  problemOf,
  put,
  textOf,
  valueOf,
} from './places.ts';

const newerText = (name: string) =>
  JSON.stringify({
    recoat: 2,
    [name === 'settings' ? 'settings' : 'facts']: name === 'settings' ? {} : [{ shape: 'new' }],
  });

describe.each(['bench', 'conditions', 'pings', 'settings'])('a newer %s file', (name) => {
  it('is refused by readers and writers, and nothing is touched', async () => {
    const folder = newFolder();
    const store = await openWriter(folder);
    valueOf(appendBench(store, note('a')));
    store.close();
    put(folder, `${name}.json`, newerText(name));
    put(folder, 'bench.json.tmp-1764000000abcdef', 'an orphan');
    const before = contentsOf(folder);
    for (const result of [
      await openStore(folder, { clock: fixedClock }),
      await openForWriting(folder, { clock: fixedClock }),
    ]) {
      expect(problemOf(result)).toMatchObject({ kind: 'newer' });
      expect(problemOf(result).says).toContain(
        `${name}.json was written by a newer recoat (form 2; this one knows up to 1)`,
      );
    }
    expect(contentsOf(folder)).toEqual(before);
  });

  it('is refused also by a program that was running when it became newer', async () => {
    const folder = newFolder();
    const store = await openWriter(folder);
    valueOf(appendBench(store, note('a')));
    put(folder, `${name}.json`, newerText(name));
    const before = contentsOf(folder);
    expect(problemOf(appendBench(store, note('b'))).kind).toBe('newer');
    expect(problemOf(store.load()).kind).toBe('newer');
    expect(contentsOf(folder)).toEqual(before);
  });
});

it('does not answer for a newer generation with an older backup', async () => {
  const folder = newFolder();
  let day = '2026-11-23';
  const store = await openWriter(folder, { today: () => day });
  valueOf(appendBench(store, note('a')));
  day = '2026-11-24';
  valueOf(appendBench(store, note('b')));
  store.close();
  put(folder, 'bench.prev.json', newerText('bench'));
  put(folder, 'bench.json', 'damaged');
  expect(problemOf(await openStore(folder, { clock: fixedClock })).kind).toBe('newer');
  expect(textOf(folder, 'bench.json')).toBe('damaged');
});
