import { arch, cpus, platform, release } from 'node:os';
import { measureDurations } from './durations/index.mjs';
import { commandRows } from './rows/commands.mjs';
import { dryingRows } from './rows/drying.mjs';
import { faultRows } from './rows/faults.mjs';
import { firstFrameRows } from './rows/first-frame.mjs';
import { foreseeingRows } from './rows/foreseeing.mjs';
import { idlingRows } from './rows/idling.mjs';
import { keysAtRandomRows } from './rows/keys-at-random.mjs';
import { lookingBackRows } from './rows/looking-back.mjs';
import { lossRows } from './rows/losses.mjs';
import { memoryRows } from './rows/memory.mjs';
import { keyRows } from './rows/keys.mjs';
import { windowRows } from './rows/windows.mjs';
import { pingRows } from './rows/pings.mjs';
import { storingRows } from './rows/storing.mjs';
import { timeRows } from './rows/time.mjs';
import { makePlace } from './place.mjs';
import { lineOf, skipped, tableOf } from './report.mjs';

/**
 * @typedef {import('./place.mjs').Place} Place
 * @typedef {import('./report.mjs').Row} Row
 */

/**
 * All rows at once, or each as soon as it is known where each takes minutes.
 *
 * @type {Readonly<Record<string, (place: Place) => Promise<readonly Row[]> | AsyncIterable<Row>>>}
 */
const groups = {
  commands: commandRows,
  'first-frame': firstFrameRows,
  idling: idlingRows,
  keys: keyRows,
  windows: windowRows,
  storing: storingRows,
  memory: memoryRows,
  foreseeing: foreseeingRows,
  'looking-back': lookingBackRows,
  drying: dryingRows,
  losses: lossRows,
  pings: pingRows,
  faults: faultRows,
  time: timeRows,
  'keys-at-random': keysAtRandomRows,
};

/** Takes minutes and measures no time: done only where it is asked for. */
const onlyNamed = new Set(['keys-at-random']);

/** These don't measure time, and run beside each other at the end. */
const together = new Set(['memory', 'losses']);

const wanted = process.argv.slice(2);

// Not one of the groups: it needs a folder of somebody's minutes, which are not the project's to keep.
if (wanted[0] === 'durations') {
  const [, folder] = wanted;
  if (folder === undefined)
    console.error('Not measured: name a folder of CSV files, npm run measure -- durations FOLDER.');
  const isMeasured = folder !== undefined && (await measureDurations(folder));
  process.exit(isMeasured ? 0 : 64);
}

const unknown = wanted.filter((name) => !(name in groups));
if (unknown.length > 0) {
  console.error(
    `Not measured: there is no ${unknown.join(', ')}. Choose: ${Object.keys(groups).join(', ')}.`,
  );
  process.exit(64);
}

const began = performance.now();
const place = await makePlace();
/** @type {Row[]} */
const rows = [];
let isBrokenOff = false;

/** @param {Row} row */
function known(row) {
  // What fails because its folder was just taken away has measured nothing.
  if (isBrokenOff) return;
  rows.push(row);
  console.error(lineOf(row));
}

/** Whoever breaks it off gets what is known by then, and nothing stays behind. */
async function breakOff() {
  console.log(tableOf(rows));
  isBrokenOff = true;
  await place.remove();
  process.exit(130);
}
for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => void breakOff());

/**
 * What can't be measured is said in the table and keeps nothing else from it.
 *
 * @param {string} name
 * @param {(place: Place) => Promise<readonly Row[]> | AsyncIterable<Row>} measure
 */
async function measured(name, measure) {
  console.error(`${name} ...`);
  try {
    const found = measure(place);
    for await (const row of Symbol.asyncIterator in found ? found : await found) known(row);
  } catch (error) {
    known(skipped(name, '', error instanceof Error ? error.message : String(error)));
  }
}

const chosen = Object.entries(groups).filter(([name]) =>
  wanted.length === 0 ? !onlyNamed.has(name) : wanted.includes(name),
);
try {
  for (const [name, measure] of chosen.filter(([name]) => !together.has(name)))
    await measured(name, measure);
  await Promise.all(
    chosen.filter(([name]) => together.has(name)).map((group) => measured(...group)),
  );
} finally {
  await place.remove();
}
if (isBrokenOff) process.exit(130);
console.log(tableOf(rows));
console.log(
  `\nNode ${process.version}, ${platform()} ${release()} ${arch()}, ${cpus().length} x ${cpus()[0]?.model}`,
);
console.error(`${Math.round((performance.now() - began) / 1000)} s`);
