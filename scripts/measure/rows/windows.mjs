import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { senseIn } from '../../../src/shell/shop-air.ts';
import { shopOf } from '../../../src/shell/shop.ts';
import { foldBench, windowsOfPiece } from '../../../src/tracker/bench/index.ts';
import { standardSettings } from '../../../src/tracker/settings/index.ts';
import { hour, inventBench, minute, sense as labelSense } from '../invented-bench.mjs';
import { inventorOfTemplates } from '../large-store.mjs';
import { fullBench } from '../place.mjs';
import { atMost, skipped } from '../report.mjs';
import { median } from '../statistics.mjs';
import { openTerminal } from '../terminal.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const ofTick = 'states and pings of all windows of 60 pieces, of the whole tick of the program';
const ticks = 1000;
const longest = 120_000;
/** A reading each quarter of an hour for four weeks: a script's, after thinning. */
const readings = 4 * 7 * 96;
const repeats = 200;

/**
 * What of a tick of the running program goes to the windows of a full bench, and what a new reading costs, after which
 * every window is worked out anew.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function windowRows(place) {
  return [await tickRow(place), await readingRow()];
}

/**
 * The whole is the processor time of the screen's process: timers, pings, drawing, Ink and what it writes.
 *
 * @param {Place} place
 * @returns {Promise<Row>}
 */
async function tickRow(place) {
  const program = await place.sideProgram('ticks.mjs');
  // From the first tick to the last some row is within ten minutes of its time, and so shows seconds.
  const bench = { pieces: fullBench, firstOpensIn: 9 * minute, apart: 9 * minute };
  const store = await place.freshStore(bench);
  const told = join(place.folder, 'tick.json');
  const began = Date.now();
  const terminal = openTerminal({
    file: program,
    args: [store, told, String(ticks)],
    env: place.environment(store),
  });
  while (!terminal.ended() && Date.now() - began < longest) {
    await wait(200);
    // Nothing of what it draws is looked at.
    terminal.take();
  }
  await terminal.end();
  const line = await readFile(told, 'utf8').catch(() => null);
  if (line === null) return skipped(ofTick, 0.25, `no ${ticks} ticks in ${longest / 1000} s`);
  /** @type {{whole: number, alone: number, windows: number, pieces: number}} */
  const { whole, alone, windows, pieces } = JSON.parse(line);
  return atMost(
    ofTick,
    0.25,
    alone / whole,
    `${inMs(alone)} of ${inMs(whole)}; ${(windows / pieces).toFixed(0)} windows a piece; n ${ticks}`,
  );
}

/** @returns {Promise<Row>} */
async function readingRow() {
  const now = Date.UTC(2026, 10, 24, 14, 29);
  const facts = inventBench(await inventorOfTemplates(), {
    pieces: fullBench,
    now,
    firstOpensIn: hour,
    apart: minute,
  });
  const bench = foldBench(facts);
  const air = Array.from({ length: readings }, (_, index) => ({
    at: now - (readings - index) * 15 * minute,
    tempC: 18 + (index % 13) / 2,
    rh: 45 + (index % 17),
  }));
  const shop = shopOf(standardSettings, { zone: 'UTC', locale: 'en-GB' });
  const newSense = () => senseIn(shop, standardSettings, air);
  const all = (/** @type {typeof labelSense} */ sense) =>
    [...bench.pieces.values()].flatMap((piece) => windowsOfPiece(piece, bench.sessions, sense));
  const timed = (/** @type {() => unknown} */ work) => {
    const times = Array.from({ length: repeats }, () => {
      const began = performance.now();
      work();
      return performance.now() - began;
    });
    return median(times.slice(repeats / 4));
  };
  const label = timed(() => all(labelSense));
  const moved = timed(() => all(newSense()));
  return atMost(
    `all windows worked out anew after a reading, with ${readings} readings against the label's figures`,
    2,
    moved / label,
    `${inMs(moved)} against ${inMs(label)}, n ${repeats}`,
  );
}

const inMs = (/** @type {number} */ ms) => `${ms.toFixed(2)} ms`;
