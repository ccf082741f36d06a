import { setTimeout as wait } from 'node:timers/promises';
import { minute } from '../invented-bench.mjs';
import { fullBench } from '../place.mjs';
import { processorTime } from '../processes.mjs';
import { atMost, skipped } from '../report.mjs';
import { openTerminal } from '../terminal.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const settling = 6_000;
const watched = 30_000;
const seconds = watched / 1000;

const cpu = 'idle CPU of that bench at 1 Hz, against naive Ink rows';
const silence = 'bytes per tick when nothing visible changed';

/**
 * The bench on which something counts down, one on which nothing does, and naive rows: all at the same time.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function idlingRows(place) {
  if (process.platform !== 'linux')
    return [skipped(cpu, 0.5, 'processor time is read from /proc, which only Linux has')];
  const naive = await place.sideProgram('naive-rows.mjs');
  const counting = await place.freshStore({ pieces: fullBench });
  const quiet = await place.freshStore({ pieces: fullBench, firstOpensIn: 20 * minute });
  const terminals = {
    counting: openTerminal({ file: place.start, env: place.environment(counting) }),
    quiet: openTerminal({ file: place.start, env: place.environment(quiet) }),
    naive: openTerminal({ file: naive, args: [String(fullBench)], env: place.environment('') }),
    visible: openTerminal({ file: naive, args: ['20'], env: place.environment('') }),
  };
  // Between two minutes nothing on the quiet bench may change: its clock shows none.
  await wait(settling);
  const intoMinute = Date.now() % minute;
  if (intoMinute > minute - watched - 1000) await wait(minute - intoMinute + 1000);
  const all = Object.entries(terminals);
  const look = () =>
    Promise.all(
      all.map(async ([name, terminal]) => ({
        name,
        cpu: await processorTime(terminal.pid),
        bytes: terminal.bytes(),
      })),
    );
  const before = await look();
  await wait(watched);
  const after = await look();
  await Promise.all(all.map(([, terminal]) => terminal.end()));
  /** @param {keyof typeof terminals} wanted */
  const spent = (wanted) => {
    const index = all.findIndex(([name]) => name === wanted);
    const [from, to] = [before[index], after[index]];
    if (from === undefined || to === undefined) throw new Error(`${wanted} was not measured`);
    return { cpu: (to.cpu - from.cpu) / seconds, bytes: (to.bytes - from.bytes) / seconds };
  };
  const [own, still, rows, fitting] = [
    spent('counting'),
    spent('quiet'),
    spent('naive'),
    spent('visible'),
  ];
  const perSecond = (/** @type {number} */ ms) => `${ms.toFixed(1)} ms/s`;
  return [
    atMost(
      cpu,
      0.5,
      own.cpu / rows.cpu,
      `${perSecond(own.cpu)}, naive ${perSecond(rows.cpu)}, naive with only the 20 rows that fit ` +
        `${perSecond(fitting.cpu)}; ${Math.round(own.bytes)} and ${Math.round(rows.bytes)} bytes/s; ${seconds} s`,
    ),
    atMost(
      silence,
      0,
      still.bytes,
      `a bench of which no time is nearer than 20 min, for ${seconds} s within a minute; ${perSecond(still.cpu)}`,
    ),
  ];
}
