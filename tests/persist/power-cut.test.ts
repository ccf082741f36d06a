// First of all: it listens to the functions that all others take.
import { couldBeLost, namesHeard } from './disk-calls.ts';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { presentForm } from '../../src/persist/file/form.ts';
import { exportText, putIn, readExport } from '../../src/persist/transfer/index.ts';
import { standardSettings } from '../../src/tracker/settings/index.ts';
import { note } from './facts.ts';
import { appendBench, newFolder, openReader, openWriter, put, valueOf } from './places.ts';

describe.skipIf(process.platform === 'win32')(
  'nothing is confirmed that a power cut could take',
  () => {
    beforeEach(() => void couldBeLost());

    it('of the first change in a new folder within a new folder', async () => {
      const folder = join(newFolder(), 'new', 'store');
      couldBeLost();
      valueOf(appendBench(await openWriter(folder), note('a')));
      expect(namesHeard()).toEqual([folder, join(folder, '..'), join(folder, 'bench.json')]);
      expect(couldBeLost()).toEqual([]);
    });

    it('of a later change, with the generation before and the backup of the day', async () => {
      const folder = newFolder();
      let today = '2026-11-24';
      const store = await openWriter(folder, { today: () => today });
      valueOf(appendBench(store, note('a')));
      today = '2026-11-25';
      couldBeLost();
      valueOf(appendBench(store, note('b')));
      expect(namesHeard()).toEqual(
        ['backups', 'backups/bench-2026-11-25.json', 'bench.prev.json', 'bench.json'].map((name) =>
          join(folder, name),
        ),
      );
      expect(couldBeLost()).toEqual([]);
    });

    it('of pieces that move to the history', async () => {
      const folder = newFolder();
      const store = await openWriter(folder);
      valueOf(appendBench(store, note('a'), note('b')));
      couldBeLost();
      valueOf(store.moveToHistory([{ year: 2025, facts: [note('a')] }]));
      expect(namesHeard()).toContain(join(folder, 'history/2025.json'));
      expect(couldBeLost()).toEqual([]);
    });

    it.each([
      ['the generation before', true],
      ['memory', false],
    ])('of what is mended from %s', async (_from, isClosed) => {
      const folder = newFolder();
      const store = await openWriter(folder);
      for (const id of ['a', 'b']) valueOf(appendBench(store, note(id)));
      if (isClosed) store.close();
      put(folder, 'bench.json', 'damaged');
      couldBeLost();
      if (isClosed) await openReader(folder);
      else valueOf(store.load());
      expect(namesHeard()).toEqual([
        join(folder, 'bench.damaged-20261124-150640.json'),
        join(folder, 'bench.json'),
      ]);
      expect(couldBeLost()).toEqual([]);
    });

    it('of a damaged file that nothing takes the place of', async () => {
      const folder = newFolder();
      put(folder, 'bench.json', 'damaged');
      couldBeLost();
      await openReader(folder);
      expect(namesHeard()).toEqual([join(folder, 'bench.damaged-20261124-150640.json')]);
      expect(couldBeLost()).toEqual([]);
    });

    it('of a store that is put in, with schedules of its own', async () => {
      const folder = newFolder();
      const text = exportText(presentForm.current, {
        bench: [note('b')],
        conditions: [],
        pings: [],
        settings: standardSettings,
        years: new Map([[2025, [note('a')]]]),
        own: new Map([['shelf.yaml', 'name: shelf\n']]),
      });
      const coming = valueOf(readExport('shop.json', Buffer.from(text), presentForm));
      const store = await openWriter(folder);
      couldBeLost();
      valueOf(putIn(store, join(folder, 'schedules'), coming, 'shop.json'));
      expect(namesHeard()).toContain(join(folder, 'schedules', 'shelf.yaml'));
      expect(couldBeLost()).toEqual([]);
    });
  },
);
