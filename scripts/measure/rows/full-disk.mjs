import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openForWriting, openStore } from '../../../src/persist/index.ts';
import { benchOfSize, noon, note } from '../../../tests/persist/facts.ts';
import { mountSmallDisk } from '../../../tests/persist/small-disk.ts';
import { newFolder } from '../place.mjs';
import { atMost, skipped } from '../report.mjs';

/** @typedef {import('../report.mjs').Row} Row */

const storeBytes = 300_000;
const bytesOf = { tmpfs: 3 * 1024 * 1024, ext4: 6 * 1024 * 1024 };
/**
 * Room left on the disk when the change is made, in sizes of the bench file: from none to more than the day's backup and
 * the new generation take.
 */
const rooms = [
  0, 0.02, 0.5, 0.95, 0.99, 1, 1.01, 1.05, 1.5, 1.9, 1.95, 1.99, 2, 2.01, 2.05, 2.1, 3,
];
const clock = { now: () => noon, today: () => '2026-11-24' };

/**
 * A change to a store on a disk with too little room for it, or just enough.
 *
 * @param {string} folder
 * @returns {Promise<Row>}
 */
export async function fullDiskRow(folder) {
  const label = 'stores damaged or confirmed intents lost: a filling disk';
  const disks = [await tryDisk('tmpfs', folder), await tryDisk('ext4', folder)];
  const tried = disks.filter((disk) => disk.problem === null);
  if (tried.length === 0) return skipped(label, 0, disks.map(({ problem }) => problem).join('; '));
  const told = disks.map(({ kind, problem, stored, refused, lost }) =>
    problem === null
      ? `${kind}: ${rooms.length} sizes of room, ${stored} stored, ${refused} refused, ${lost} lost or damaged`
      : `${kind} skipped: ${problem}`,
  );
  return atMost(
    label,
    0,
    tried.reduce((sum, { lost }) => sum + lost, 0),
    told.join('; '),
  );
}

/**
 * @param {'tmpfs' | 'ext4'} kind
 * @param {string} place
 */
async function tryDisk(kind, place) {
  const count = {
    kind,
    problem: /** @type {string | null} */ (null),
    stored: 0,
    refused: 0,
    lost: 0,
  };
  for (const room of rooms) {
    const folder = newFolder(place);
    let disk;
    try {
      disk = mountSmallDisk(kind, folder, bytesOf[kind]);
    } catch (error) {
      const said = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
      count.problem = `no right to mount, or no tool for it (${said})`;
      return count;
    }
    try {
      const outcome = await changeOnFullDisk(folder, disk, room);
      count[outcome.confirmed ? 'stored' : 'refused'] += 1;
      if (!outcome.isRight) count.lost += 1;
    } finally {
      disk.unmount();
    }
  }
  return count;
}

/**
 * Fills the disk, changes the store, and looks whether it holds what was said to be stored.
 *
 * @param {string} at
 * @param {import('../../../tests/persist/small-disk.ts').SmallDisk} disk mounted there
 * @param {number} room what is left, in sizes of the bench file
 */
async function changeOnFullDisk(at, disk, room) {
  const folder = join(at, 'store');
  mkdirSync(folder);
  const facts = benchOfSize(storeBytes);
  const store = await openForWriting(folder, { clock });
  if (!store.ok) throw new Error(store.problem.says);
  const before = store.value.change(() => ({ append: { bench: facts }, result: null }));
  if (!before.ok) throw new Error(before.problem.says);
  disk.fillUpTo(room * statSync(join(folder, 'bench.json')).size);
  const told = store.value.change(() => ({ append: { bench: [note('last')] }, result: null }));
  store.value.close();
  const opened = await openStore(folder, { clock });
  const expected = [...facts, ...(told.ok ? [note('last')] : [])];
  const isRight =
    opened.ok &&
    opened.value.notices.length === 0 &&
    JSON.stringify(opened.value.bench) === JSON.stringify(expected);
  return { confirmed: told.ok, isRight };
}
