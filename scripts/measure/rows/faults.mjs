import { join } from 'node:path';
import { damageFiles } from '../../../tests/persist/damage-files.ts';
import { writeAllAtOnce } from '../../../tests/terminal/faults/all-at-once.ts';
import { killScreens } from '../../../tests/terminal/faults/kill-screens.ts';
import { pressOnFailingDisk } from '../../../tests/terminal/faults/small-disks.ts';
import { newFolder } from '../place.mjs';
import { atMost, skipped } from '../report.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const kills = 1000;
/** One for each core of a small machine. */
const atOnce = 2;
const filledDisks = 40;
const readOnlyDisks = 10;
const damages = 500;
const minute = 60_000;
const seed = 20261124;

const what = 'confirmed on a screen and lost, or stores damaged: ';

/**
 * What is lost where the whole program is killed, its disk fails, its files are damaged, or several of it write at once.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function faultRows(place) {
  return [
    await killRow(place),
    await diskRow(place, 'fills up', filledDisks),
    await diskRow(place, 'can only be read', readOnlyDisks),
    await togetherRow(place),
    await damageRow(place),
  ];
}

/** @param {Place} place @returns {Promise<Row>} */
async function killRow(place) {
  const count = await killScreens(place, newFolder(place.folder), { kills, atOnce, seed });
  return atMost(
    `${what}kill -9 while a key is pressed`,
    0,
    count.lost + count.damaged,
    `${count.kills} screens killed, ${count.confirmed} presses confirmed, ${count.lost} lost, ${count.damaged} damaged`,
  );
}

/**
 * @param {Place} place
 * @param {import('../../../tests/terminal/faults/small-disks.ts').DiskFault} fault
 * @param {number} screens
 * @returns {Promise<Row>}
 */
async function diskRow(place, fault, screens) {
  const label = `${what}a disk that ${fault}`;
  try {
    const count = await pressOnFailingDisk(place, newFolder(place.folder), {
      fault,
      screens,
      seed,
    });
    return atMost(
      label,
      0,
      count.lost + count.damaged,
      `${count.screens} screens, ${count.confirmed} presses confirmed, ${count.refused} screens said what was not stored, ${count.lost} lost, ${count.damaged} damaged`,
    );
  } catch (error) {
    const said = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
    return skipped(label, 0, said);
  }
}

/** @param {Place} place @returns {Promise<Row>} */
async function togetherRow(place) {
  const store = join(newFolder(place.folder), 'store');
  const count = await writeAllAtOnce(place, store, minute);
  return atMost(
    `${what}two screens, a keeper and commands at once`,
    0,
    count.lost + count.doubled + count.damaged,
    `a minute: ${count.notes} notes by commands and ${count.sections} presses, ${count.lost} lost, ${count.doubled} double, ${count.damaged} damaged`,
  );
}

/** @param {Place} place @returns {Promise<Row>} */
async function damageRow(place) {
  const count = await damageFiles(newFolder(place.folder), { damages, seed });
  return atMost(
    'damaged files taken for good ones, or more lost than the last change',
    0,
    count.unnoticed + count.lost,
    `${count.damages} files cut, overwritten or with bytes changed; ${count.named} named and set aside, ${count.harmless} as good as before`,
  );
}
