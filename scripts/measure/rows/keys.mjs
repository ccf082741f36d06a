import { setTimeout as wait } from 'node:timers/promises';
import { fullBench } from '../place.mjs';
import { atMost } from '../report.mjs';
import { median, quantile } from '../statistics.mjs';
import { openTerminal } from '../terminal.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const presses = 200;
const down = '\u001b[B';
/** The guards take keys that come closer for a held key. */
const apart = 160;

/**
 * Only the marked row is written with a closing bracket; the digits before it may be left out, where they stand there
 * already.
 */
const marked = /\d\]/;

/** @param {ReturnType<typeof openTerminal>} terminal */
const presser = (terminal) => async () => {
  terminal.take();
  const began = performance.now();
  terminal.write(down);
  return (await terminal.until((output) => marked.test(output))) - began;
};

/**
 * From a key to the frame in which another piece is selected, in turn with a program that redraws plain lines. The bench
 * counts down all the while.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function keyRows(place) {
  const raw = await place.sideProgram('raw-redraw.mjs');
  const store = await place.freshStore({ pieces: fullBench });
  const terminals = [
    openTerminal({ file: place.start, env: place.environment(store) }),
    openTerminal({ file: raw, env: place.environment('') }),
  ];
  await Promise.all(terminals.map((terminal) => terminal.until((output) => marked.test(output))));
  await wait(4000);
  const [bench, plain] = terminals.map(presser);
  if (bench === undefined || plain === undefined) throw new Error('two programs were started');
  const [times, rawTimes] = [/** @type {number[]} */ ([]), /** @type {number[]} */ ([])];
  for (let press = 0; press < presses; press++) {
    times.push(await bench());
    await wait(apart / 2 + Math.random() * 20);
    rawTimes.push(await plain());
    await wait(apart / 2 + Math.random() * 20);
  }
  await Promise.all(terminals.map((terminal) => terminal.end()));
  const [own, least] = [median(times), median(rawTimes)];
  const last = quantile(times, 0.99);
  const inMs = (/** @type {number} */ ms) => `${ms.toFixed(2)} ms`;
  return [
    atMost(
      'key to changed frame, median, against a raw redraw',
      11,
      own / least,
      `${inMs(own)}, raw ${inMs(least)}, n ${presses}`,
    ),
    atMost(
      'key to changed frame, 99th percentile, ms',
      25,
      last,
      `90th ${inMs(quantile(times, 0.9))}; raw 99th ${inMs(quantile(rawTimes, 0.99))}; nothing is planned meanwhile yet`,
    ),
  ];
}
