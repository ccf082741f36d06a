import { copyFileSync, readdirSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { note } from './facts.ts';
import { appendBench, idsOf, newFolder, openReader, openWriter, put, valueOf } from './places.ts';

/** Two notes a day for as many days of November. */
async function daysOfWork(days: number): Promise<string> {
  const folder = newFolder();
  let day = 1;
  const store = await openWriter(folder, {
    today: () => `2026-11-${String(day).padStart(2, '0')}`,
  });
  for (; day <= days; day++) {
    for (const half of ['am', 'pm']) valueOf(appendBench(store, note(`${day}${half}`)));
  }
  store.close();
  return folder;
}

const backups = (folder: string) => readdirSync(join(folder, 'backups'));

it('makes one backup a day, before the first change of that day, and keeps ten', async () => {
  const folder = await daysOfWork(14);
  expect(backups(folder)).toEqual(
    ['05', '06', '07', '08', '09', '10', '11', '12', '13', '14'].map(
      (day) => `bench-2026-11-${day}.json`,
    ),
  );
});

it('restores the newest good backup if the file and the generation before are damaged', async () => {
  const folder = await daysOfWork(4);
  put(folder, 'bench.json', '');
  put(folder, 'bench.prev.json', '{"recoat":');
  put(folder, 'backups/bench-2026-11-04.json', 'damaged as well');
  const opened = await openReader(folder);
  expect(idsOf(opened.bench)).toEqual(['1am', '1pm', '2am', '2pm']);
  expect(opened.notices[0]?.says).toContain('backups/bench-2026-11-03.json was put in its place');
});

it('restores a backup also if both files are gone', async () => {
  const folder = await daysOfWork(2);
  unlinkSync(join(folder, 'bench.json'));
  unlinkSync(join(folder, 'bench.prev.json'));
  expect(idsOf((await openReader(folder)).bench)).toEqual(['1am', '1pm']);
});

it('holds backups that can simply be copied back by hand', async () => {
  const folder = await daysOfWork(3);
  copyFileSync(join(folder, 'backups/bench-2026-11-03.json'), join(folder, 'bench.json'));
  const store = await openWriter(folder);
  expect(idsOf(valueOf(store.load()).bench)).toEqual(['1am', '1pm', '2am', '2pm']);
  expect(store.notices()).toEqual([]);
});

it('stores the key press and says so if the backup can not be made', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  valueOf(appendBench(store, note('a')));
  put(folder, 'backups', 'a file where the folder of backups should be');
  valueOf(appendBench(store, note('b')));
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b']);
  expect(store.notices()[0]?.says).toContain('could not be made');
});
