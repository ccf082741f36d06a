import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { openForWriting } from '../../../src/persist/index.ts';
import { noon, note } from '../../../tests/persist/facts.ts';
import { pingDelays } from '../../../tests/shell/ping/ping-delays.ts';
import { newFolder, usualBench } from '../place.mjs';
import { processorTime, runToEnd } from '../processes.mjs';
import { atMost, told } from '../report.mjs';
import { median, quantile } from '../statistics.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const pings = 1000;
const watchedFor = 60_000;
const writes = 200;
const kills = 200;
const clock = { now: () => noon, today: () => '2026-11-24' };

/**
 * How late a ping is, what a keeper costs while it waits, and what the lock lets through.
 *
 * @param {Place} place
 * @returns {AsyncGenerator<Row>}
 */
export async function* pingRows(place) {
  yield await delayRow(place);
  yield* await keeperRows(place);
  yield await writesRow(place);
  yield await deadHolderRow(place);
}

/** @param {Place} place @returns {Promise<Row>} */
async function delayRow(place) {
  const { sent, recorded, missing } = await pingDelays(newFolder(place.folder), pings);
  const inMs = (/** @type {number} */ ms) => `${ms.toFixed(1)} ms`;
  return atMost(
    'a ping after its instant, the worst, ms',
    1000,
    missing > 0 ? Number.POSITIVE_INFINITY : Math.max(...sent),
    `n ${pings}; median ${inMs(median(sent))}, worst ${inMs(Math.max(...sent))}; on record after ${inMs(median(recorded))}, worst ${inMs(Math.max(...recorded))}; ${missing} missing`,
  );
}

/** @param {Place} place @returns {Promise<readonly Row[]>} */
async function keeperRows(place) {
  const store = join(newFolder(place.folder), 'store');
  const env = place.environment(store);
  for (const words of [
    ['add', 'Chest', '--schedule', 'glue-up-repair'],
    ['settings', 'desktop', 'false'],
    ['timer', 'clamps', '2h'],
  ])
    runToEnd([place.start, ...words], env);
  const waiting = [
    [place.start, 'keep'],
    ['-e', 'setTimeout(() => {}, 1e8)'],
  ].map((args) => spawn(process.execPath, args, { env, stdio: 'ignore' }));
  try {
    await wait(5000);
    const pids = waiting.map(({ pid }) => pid ?? 0);
    const before = await Promise.all(pids.map(processorTime));
    await wait(watchedFor);
    const after = await Promise.all(pids.map(processorTime));
    const [keeper = 0, bare = 0] = after.map((ms, index) => ms - (before[index] ?? 0));
    const [own = 0, least = 0] = await Promise.all(pids.map(residentMegabytes));
    return [
      told(
        'a keeper that waits: processor time, ms a minute',
        keeper.toFixed(0),
        `a window two hours ahead, over 60 s; a Node that sleeps ${bare.toFixed(1)}`,
      ),
      told(
        'a keeper that waits: memory, MB',
        own.toFixed(0),
        `a Node that sleeps ${least.toFixed(0)}; ${(own / least).toFixed(2)} times`,
      ),
    ];
  } finally {
    await Promise.all(
      waiting.map(async (child) => {
        const closed = once(child, 'close');
        child.kill('SIGTERM');
        await closed;
      }),
    );
  }
}

/** @param {number} pid @returns {Promise<number>} Linux only */
async function residentMegabytes(pid) {
  const [, kilobytes = '0'] =
    /VmRSS:\s+(\d+)/.exec(await readFile(`/proc/${pid}/status`, 'utf8')) ?? [];
  return Number(kilobytes) / 1024;
}

/** @param {Place} place @returns {Promise<Row>} */
async function writesRow(place) {
  const store = await place.freshStore({ pieces: usualBench });
  const opened = await openForWriting(store, { clock });
  if (!opened.ok) throw new Error(opened.problem.says);
  const began = performance.now();
  for (let write = 0; write < writes; write++) {
    const stored = opened.value.change(() => ({
      append: { bench: [note(`write-${write}`)] },
      result: null,
    }));
    if (!stored.ok) throw new Error(stored.problem.says);
  }
  const seconds = (performance.now() - began) / 1000;
  opened.value.close();
  return told(
    'changes stored durably under the lock, a second',
    (writes / seconds).toFixed(0),
    `one writer, ${usualBench} pieces, n ${writes}`,
  );
}

/** @param {readonly number[]} times in ms */
const spread = (times) =>
  `median ${median(times).toFixed(1)} ms, 90th ${quantile(times, 0.9).toFixed(1)} ms, 99th ${quantile(times, 0.99).toFixed(1)} ms`;

/** @param {Place} place @returns {Promise<Row>} */
async function deadHolderRow(place) {
  const folder = newFolder(place.folder);
  const store = await openForWriting(folder, { clock });
  if (!store.ok) throw new Error(store.problem.says);
  const program = join(import.meta.dirname, '../../../tests/persist/children/work-on-request.ts');
  const times = [];
  /** @type {number[]} */
  const waits = [];
  for (let kill = 0; kill < kills; kill++) {
    const holder = spawn(process.execPath, [program, folder], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    const closed = once(holder, 'close');
    let said = '';
    const holds = new Promise((/** @type {(value: void) => void} */ resolve) => {
      holder.stdout.on('data', (chunk) => {
        said += String(chunk);
        if (said.includes('holding')) resolve();
      });
    });
    holder.stdin.write('hold 60000\n');
    await holds;
    holder.kill('SIGKILL');
    const began = performance.now();
    const stored = store.value.change(() => {
      waits.push(performance.now() - began);
      return { append: { bench: [note(`after-${kill}`)] }, result: null };
    });
    times.push(performance.now() - began);
    if (!stored.ok) throw new Error(stored.problem.says);
    await closed;
  }
  store.value.close();
  return atMost(
    'a change after the holder of the lock was killed, the worst, ms',
    100,
    Math.max(...times),
    `n ${kills}, ${spread(times)}; of it waiting for the lock: ${spread(waits)}, worst ${Math.max(...waits).toFixed(1)} ms`,
  );
}
