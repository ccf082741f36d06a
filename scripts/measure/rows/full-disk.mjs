import { execFileSync } from 'node:child_process';
import { mkdirSync, statSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openForWriting, openStore } from '../../../src/persist/index.ts';
import { benchOfSize, noon, note } from '../../../tests/persist/facts.ts';
import { newFolder } from '../place.mjs';
import { atMost, skipped } from '../report.mjs';

/** @typedef {import('../report.mjs').Row} Row */

const storeBytes = 300_000;
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
    const disk = newFolder(place);
    try {
      mountDisk(kind, disk);
    } catch (error) {
      const said = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
      count.problem = `no right to mount, or no tool for it (${said})`;
      return count;
    }
    try {
      const outcome = await changeOnFullDisk(disk, room);
      count[outcome.confirmed ? 'stored' : 'refused'] += 1;
      if (!outcome.isRight) count.lost += 1;
    } finally {
      run('umount', '--lazy', disk);
    }
  }
  return count;
}

/** @param {'tmpfs' | 'ext4'} kind @param {string} disk */
function mountDisk(kind, disk) {
  if (process.platform !== 'linux') throw new Error('small disks are only made on Linux');
  if (kind === 'tmpfs') return run('mount', '-t', 'tmpfs', '-o', 'size=3m', 'tmpfs', disk);
  const image = `${disk}.image`;
  writeFileSync(image, Buffer.alloc(6 * 1024 * 1024));
  run('mkfs.ext4', '-q', '-m', '0', image);
  run('mount', '-o', 'loop', image, disk);
}

/** @param {string} program @param {string[]} words */
function run(program, ...words) {
  execFileSync(program, words, { stdio: 'pipe' });
}

/**
 * Fills the disk, changes the store, and looks whether it holds what was said to be stored.
 *
 * @param {string} disk
 * @param {number} room what is left, in sizes of the bench file
 */
async function changeOnFullDisk(disk, room) {
  const folder = join(disk, 'store');
  mkdirSync(folder);
  const facts = benchOfSize(storeBytes);
  const store = await openForWriting(folder, { clock });
  if (!store.ok) throw new Error(store.problem.says);
  const before = store.value.change(() => ({ append: { bench: facts }, result: null }));
  if (!before.ok) throw new Error(before.problem.says);
  fillUpTo(disk, room * statSync(join(folder, 'bench.json')).size);
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

/** @param {string} disk @param {number} left bytes */
function fillUpTo(disk, left) {
  const { bavail, bsize } = statfsSync(disk);
  const bytes = Math.max(0, Math.floor(bavail * bsize - left));
  try {
    writeFileSync(join(disk, 'other things'), Buffer.alloc(bytes));
  } catch {
    // Some file systems keep a little back; then the disk is full already.
  }
}
