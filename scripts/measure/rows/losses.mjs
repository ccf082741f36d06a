import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { openStore } from '../../../src/persist/index.ts';
import { noon } from '../../../tests/persist/facts.ts';
import { killWhileWriting } from '../../../tests/persist/kill-loop.ts';
import { newFolder } from '../place.mjs';
import { atMost } from '../report.mjs';
import { fullDiskRow } from './full-disk.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const kills = 100;
const appends = 100;
const storeBytes = 300_000;
const clock = { now: () => noon, today: () => '2026-11-24' };

/**
 * What is lost or damaged where a program dies, two write, or the disk fills.
 *
 * @param {Place} place
 * @returns {AsyncGenerator<Row>}
 */
export async function* lossRows(place) {
  yield await killRow(place);
  yield await writersRow(place);
  yield await fullDiskRow(place.folder);
}

const what = 'stores damaged or confirmed intents lost: ';

/** @param {Place} place @returns {Promise<Row>} */
async function killRow({ folder }) {
  const count = await killWhileWriting(newFolder(folder), kills, storeBytes);
  return atMost(
    `${what}kill -9`,
    0,
    count.lost + count.damaged,
    `${count.kills} kills, ${count.confirmed} confirmed, ${count.lost} lost, ${count.damaged} damaged`,
  );
}

/** @param {Place} place @returns {Promise<Row>} */
async function writersRow({ folder: place }) {
  const folder = newFolder(place);
  const script = join(
    import.meta.dirname,
    '..',
    '..',
    '..',
    'tests',
    'persist',
    'children',
    'append-many.ts',
  );
  const confirmed = await Promise.all(
    ['a', 'b'].map(async (prefix) => {
      const child = spawn(process.execPath, [script, folder, prefix, String(appends)], {
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      let said = '';
      child.stdout.on('data', (chunk) => (said += String(chunk)));
      await once(child, 'close');
      return said.trim().split('\n');
    }),
  );
  const ids = confirmed.flat();
  const opened = await openStore(folder, { clock });
  const kept = new Set(opened.ok ? opened.value.bench.map(({ id }) => id) : []);
  const lost = ids.filter((id) => !kept.has(id)).length + 2 * appends - ids.length;
  const damaged = opened.ok ? opened.value.notices.length : 1;
  return atMost(
    `${what}two writers`,
    0,
    lost + damaged,
    `2 x ${appends} at once, ${lost} lost, ${damaged} damaged`,
  );
}
