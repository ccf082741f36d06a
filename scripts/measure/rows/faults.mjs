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
/** Where so many screens at a time write to disks of their own. */
const screensOn = {
  'fills up': { tmpfs: 40, ext4: 20 },
  'takes no new file any more': { tmpfs: 20, ext4: 10 },
  'can only be read': { tmpfs: 10, ext4: 0 },
};
const damages = 500;
const minute = 60_000;
const seed = 20261124;

const what = 'confirmed on a screen and lost, or stores damaged: ';

/**
 * What is lost where the whole program is killed, its disk fails, its files are damaged, or several of it write at once.
 *
 * @param {Place} place
 * @returns {AsyncGenerator<Row>}
 */
export async function* faultRows(place) {
  yield await killRow(place);
  for (const fault of /** @type {(keyof typeof screensOn)[]} */ (Object.keys(screensOn)))
    yield await diskRow(place, fault);
  yield await togetherRow(place);
  yield await damageRow(place);
}

/**
 * Says on standard error how far it is, ten times in all.
 *
 * @param {string} part
 * @param {number} of
 */
function progress(part, of) {
  let done = 0;
  return () => {
    done += 1;
    if (done % Math.ceil(of / 10) === 0 || done === of)
      console.error(`  ${part}: ${done} of ${of}`);
  };
}

/** @param {Place} place @returns {Promise<Row>} */
async function killRow(place) {
  const told = progress('screens killed', kills);
  const count = await killScreens(place, newFolder(place.folder), { kills, atOnce, seed, told });
  return atMost(
    `${what}kill -9 while a key is pressed`,
    0,
    count.lost + count.damaged,
    `${count.kills} screens killed, ${count.confirmed} presses confirmed, ${count.lost} lost, ${count.damaged} damaged`,
  );
}

/**
 * @param {Place} place
 * @param {keyof typeof screensOn} fault
 * @returns {Promise<Row>}
 */
async function diskRow(place, fault) {
  const label = `${what}a disk that ${fault}`;
  /** @type {string[]} */
  const details = [];
  let bad = 0;
  let tried = 0;
  for (const kind of /** @type {const} */ (['tmpfs', 'ext4'])) {
    const screens = screensOn[fault][kind];
    if (screens === 0) continue;
    const told = progress(`screens on ${kind} that ${fault}`, screens);
    try {
      const count = await pressOnFailingDisk(place, newFolder(place.folder), {
        fault,
        kind,
        screens,
        seed,
        atOnce,
        told,
      });
      tried += count.screens;
      bad += count.lost + count.damaged;
      details.push(
        `${kind}: ${count.screens} screens, ${count.confirmed} presses confirmed, ${count.refused} said what was not stored, ${count.recovered} went on after it, ${count.lost} lost, ${count.damaged} damaged`,
      );
    } catch (error) {
      const said = error instanceof Error ? error.message : String(error);
      details.push(
        `${kind} skipped: ${said
          .split(/\s*\n\s*/)
          .slice(0, 3)
          .join(' / ')}`,
      );
    }
  }
  return tried === 0
    ? skipped(label, 0, details.join('; '))
    : atMost(label, 0, bad, details.join('; '));
}

/** @param {Place} place @returns {Promise<Row>} */
async function togetherRow(place) {
  const store = join(newFolder(place.folder), 'store');
  console.error('  two screens, a keeper and commands at once: a minute');
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
  const told = progress('files damaged', damages);
  const count = await damageFiles(newFolder(place.folder), { damages, seed, told });
  return atMost(
    'damaged files taken for good ones, or more lost than the last change',
    0,
    count.unnoticed + count.lost,
    `${count.damages} files cut, overwritten or with bytes changed; ${count.named} named and set aside, ${count.harmless} as good as before`,
  );
}
