import { fullBench, usualBench } from '../place.mjs';
import { runToEnd } from '../processes.mjs';
import { atMost, skipped } from '../report.mjs';
import { inKb, inMs, median } from '../statistics.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const rounds = 21;

/** @type {readonly {what: string, target: number, args: readonly string[], isAnswer: (output: string) => boolean}[]} */
const commands = [
  {
    what: 'a command that reads, as JSON',
    target: 1.8,
    args: ['bench', '--json'],
    isAnswer: (output) => JSON.parse(output).rows.length > 0,
  },
  {
    what: 'the same as text with clock times',
    target: 2.4,
    args: ['bench'],
    isAnswer: (output) => /\d\d:\d\d/.test(output),
  },
  {
    what: 'a command that writes',
    target: 3.8,
    args: ['note', '1', 'runner replaced'],
    isAnswer: (output) => output !== '',
  },
];

/**
 * Commands from start to exit, in turn with an empty Node.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function commandRows(place) {
  const measured = [];
  for (const pieces of [usualBench, fullBench]) {
    const store = await place.freshStore({ pieces });
    const size = inKb(await place.benchBytes(store));
    for (const command of commands) {
      const run = () => runToEnd([place.start, ...command.args], place.environment(store));
      const what = `${command.what}, ${pieces} pieces (${size})`;
      /** @type {number[]} */
      const times = [];
      measured.push({ ...command, what, run, times, problem: problemOf(run, command.isAnswer) });
    }
  }
  const environment = place.environment('');
  const base = [];
  for (let round = 0; round < rounds; round++) {
    base.push(runToEnd(['-e', '0'], environment).ms);
    for (const { run, times, problem } of measured) {
      if (problem === null) times.push(run().ms);
    }
  }
  const empty = median(base);
  return measured.map(({ what, target, times, problem }) => {
    if (problem !== null) return skipped(what, target, problem);
    const ms = median(times);
    return atMost(
      what,
      target,
      ms / empty,
      `${inMs(ms)}, \`node -e 0\` ${inMs(empty)}, n ${rounds}`,
    );
  });
}

/**
 * Runs it twice, so that its compiled code is kept, and looks whether it does what is to be measured.
 *
 * @param {() => {output: string}} run
 * @param {(output: string) => boolean} isAnswer
 * @returns {string | null}
 */
function problemOf(run, isAnswer) {
  try {
    run();
    const { output } = run();
    return isAnswer(output) ? null : `it answers ${JSON.stringify(output.slice(0, 60))}`;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
