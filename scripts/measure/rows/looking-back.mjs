import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { openStore } from '../../../src/persist/index.ts';
import { createLookingBack } from '../../../src/shell/past/looking-back.ts';
import { startThread } from '../../../src/shell/past/start-thread.ts';
import { createSession } from '../../../src/shell/session.ts';
import { noRules } from '../../../src/tracker/trade/index.ts';
import { hoursScreen } from '../../../src/views/hours/index.ts';
import { inventorOfTemplates, writeBench, writeLongHistory } from '../large-store.mjs';
import { usualBench } from '../place.mjs';
import { runToEnd } from '../processes.mjs';
import { atMost } from '../report.mjs';
import { inMs, median } from '../statistics.mjs';
import { frameEnd, openTerminal } from '../terminal.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

/** About 100,000 sessions. */
const [years, piecesAYear, invented] = [10, 500, 50];
const rounds = 21;
const second = 1000;

/**
 * What ten very busy years cost: while they are looked back over, and at a start.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function lookingBackRows(place) {
  const [invent, now] = [await inventorOfTemplates(), Date.now()];
  const [long, none] = [join(place.folder, 'long'), join(place.folder, 'none')];
  await writeLongHistory(long, { years, now, invent, piecesAYear, invented });
  // The same bench in both.
  for (const store of [long, none])
    await writeBench(store, { pieces: usualBench, now, invent: await inventorOfTemplates() });
  return [...(await stallRows(long)), ...(await startRows(place, long, none))];
}

/** @param {string} folder @returns {Promise<readonly Row[]>} */
async function stallRows(folder) {
  const clock = { now: Date.now, uptime: () => null, bootId: null };
  const today = () => new Date().toISOString().slice(0, 10);
  const opened = await openStore(folder, { clock: { now: clock.now, today } });
  if (!opened.ok) throw new Error(opened.problem.says);
  const session = createSession({
    loaded: opened.value,
    notices: [],
    folder,
    rules: noRules,
    store: () => null,
    clock,
    newId: () => 'measured',
    here: { zone: 'UTC', locale: 'en-GB' },
    soon: () => undefined,
  });
  const looking = createLookingBack({ session, store: () => null, clock, start: startThread });
  // As the screen does it: every news is drawn.
  looking.subscribe(() => {
    const lookingBack = looking.state();
    if (lookingBack === undefined) return;
    hoursScreen.draw(
      { is: 'hours', piece: null, at: 0, past: null, page: 'back-test' },
      {
        snapshot: { ...session.snapshot(), lookingBack },
        now: Date.now(),
        columns: 80,
        rows: 24,
        theme: { colour: 'none', glyphs: 'blocks' },
        message: null,
      },
    );
  });
  const idle = await longestStall(() => wait(5 * second));
  const began = performance.now();
  let sessions = 0;
  const busy = await longestStall(async () => {
    looking.begin();
    looking.backTest();
    while (looking.state()?.is !== 'waiting' || looking.state()?.backTest === null) {
      if (looking.state()?.is === 'failed') throw new Error(looking.state()?.says ?? '');
      await wait(20);
    }
    sessions = looking.state()?.backTest?.of ?? 0;
  });
  const took = (performance.now() - began) / second;
  looking.end();
  return [
    atMost(
      `longest work of the screen's thread in one go while a back-test over ${sessions} sessions runs, ms`,
      25,
      busy,
      `idle ${inMs(idle)}; the back-test took ${took.toFixed(1)} s in its own thread, reading included`,
    ),
  ];
}

/**
 * The processor time of this thread alone: what another program or thread takes away from it on a busy machine is no work
 * of the screen's.
 *
 * @param {() => Promise<unknown>} work
 * @returns {Promise<number>} the longest that this thread worked in one go, in ms
 */
async function longestStall(work) {
  let [longest, last, isOver] = [0, ownTime(), false];
  const look = () => {
    const now = ownTime();
    longest = Math.max(longest, now - last);
    last = now;
    if (!isOver) setTimeout(look, 1);
  };
  look();
  await work();
  isOver = true;
  return longest;
}

const ownTime = () => {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / 1000;
};

/** @param {Place} place @param {string} long @param {string} none @returns {Promise<readonly Row[]>} */
async function startRows(place, long, none) {
  const envs = [place.environment(long), place.environment(none)];
  const show = async (/** @type {Record<string, string>} */ env) => {
    const terminal = openTerminal({ file: place.start, env });
    const shown = await terminal.until(
      (output) => output.includes(frameEnd) && output.includes('in hand'),
    );
    return { ms: shown - terminal.began, terminal };
  };
  const first = await Promise.all(envs.map(show));
  // Learned from, and the compiled code kept.
  await wait(20 * second);
  for (const { terminal } of first) await terminal.end();
  const frames = envs.map(() => /** @type {number[]} */ ([]));
  const reads = envs.map(() => /** @type {number[]} */ ([]));
  for (let round = 0; round < rounds; round++) {
    for (const [side, env] of round % 2 === 0
      ? [...envs.entries()]
      : [...envs.entries()].reverse()) {
      reads[side]?.push(runToEnd([place.start, '--json'], env).ms);
      const { ms, terminal } = await show(env);
      frames[side]?.push(ms);
      await terminal.end();
    }
  }
  /** @param {string} what @param {number[][]} times @returns {Row} */
  const row = (what, [of = [], against = []]) =>
    atMost(
      `${what}, with ten years of learning against none`,
      1.1,
      median(of) / median(against),
      `${inMs(median(of))} against ${inMs(median(against))}, n ${rounds}; ${years * piecesAYear} pieces`,
    );
  return [row('first frame', frames), row('a command that reads, as JSON', reads)];
}
