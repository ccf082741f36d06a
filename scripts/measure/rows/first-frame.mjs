import { fullBench } from '../place.mjs';
import { runToEnd } from '../processes.mjs';
import { atMost } from '../report.mjs';
import { inMs, median } from '../statistics.mjs';
import { frameEnd, openTerminal } from '../terminal.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const rounds = 15;

/**
 * From starting the program in a terminal to the end of the first frame with pieces on it, in turn with an empty Node.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function firstFrameRows(place) {
  const env = place.environment(await place.freshStore({ pieces: fullBench }));
  const show = async () => {
    const terminal = openTerminal({ file: place.start, env });
    const shown = await terminal.until(
      (output) => output.includes(frameEnd) && output.includes('in hand'),
    );
    return { ms: shown - terminal.began, terminal };
  };
  const first = await show();
  // The compiled code is kept once the writing part is loaded.
  await new Promise((resolve) => setTimeout(resolve, 1500));
  await first.terminal.end();
  const [base, times] = [/** @type {number[]} */ ([]), /** @type {number[]} */ ([])];
  for (let round = 0; round < rounds; round++) {
    base.push(runToEnd(['-e', '0'], env).ms);
    const { ms, terminal } = await show();
    times.push(ms);
    await terminal.end();
  }
  const [empty, ms] = [median(base), median(times)];
  return [
    atMost(
      'first frame of a full bench at 80x24',
      4.8,
      ms / empty,
      `${inMs(ms)}, \`node -e 0\` ${inMs(empty)}, n ${rounds}`,
    ),
  ];
}
