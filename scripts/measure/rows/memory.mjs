import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { minute } from '../invented-bench.mjs';
import { fullBench } from '../place.mjs';
import { atMost, skipped } from '../report.mjs';
import { openTerminal } from '../terminal.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 * @typedef {{frames: number, heapUsed: number, rss: number, simulated: number}} Reading
 */

const what = 'heap after 10,000 ticks against 500, after collection';
const few = 500;
const many = 10_000;
const longest = 600_000;
/** As many as have come up to their time by then, those that had before, and the next. */
const rowsThatShowThem = 42;

/**
 * The real screen, its pings and its store on a clock that runs as fast as frames can be drawn.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function memoryRows(place) {
  const program = await place.sideProgram('long-run.mjs');
  // From the first tick to the last some row is within ten minutes of its time, and so shows seconds.
  const bench = { pieces: fullBench, firstOpensIn: 9 * minute, apart: 9 * minute };
  const store = await place.freshStore(bench);
  const told = join(place.folder, 'heap.jsonl');
  const steps = [few, 2000, 5000, many].map(String);
  const began = Date.now();
  const terminal = openTerminal({
    file: '--expose-gc',
    args: [program, store, told, ...steps],
    env: place.environment(store),
    rows: rowsThatShowThem,
  });
  while (!terminal.ended() && Date.now() - began < longest) {
    await wait(500);
    // Nothing of what it draws is looked at.
    terminal.take();
  }
  await terminal.end();
  const lines = await readFile(told, 'utf8').catch(() => '');
  /** @type {Reading[]} */
  const readings = lines.split('\n').flatMap((line) => (line === '' ? [] : [JSON.parse(line)]));
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined || first === last)
    return [skipped(what, 1.1, `fewer than ${steps[1]} ticks in ${longest / 1000} s`)];
  const megabytes = (/** @type {number} */ bytes) => `${(bytes / 1e6).toFixed(1)} MB`;
  const row = atMost(
    last.frames === many ? what : `${what} (only ${last.frames} were reached)`,
    1.1,
    last.heapUsed / first.heapUsed,
    readings.map(({ frames, heapUsed }) => `${frames}: ${megabytes(heapUsed)}`).join(', ') +
      `; resident ${megabytes(first.rss)}, then ${megabytes(last.rss)}`,
  );
  return [row];
}
