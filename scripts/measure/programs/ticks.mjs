/**
 * What a tick of the program's own screen costs in all, and what of that the windows can cost at most:
 * `node ticks.mjs FOLDER FILE TICKS`. A line of JSON goes to FILE.
 */
import { writeFileSync } from 'node:fs';
import { openStore } from '../../../src/persist/index.ts';
import { readingsOf } from '../../../src/shell/intent-context.ts';
import { senseIn } from '../../../src/shell/shop-air.ts';
import {
  foldBench,
  nextPingAt,
  sendingsDue,
  windowsOfPiece,
} from '../../../src/tracker/bench/index.ts';
import { shopOf } from '../../../src/shell/shop.ts';
import { stateAt } from '../../../src/tracker/windows/index.ts';
import { median } from '../statistics.mjs';
import { runHurried } from './hurried-screen.mjs';

/** What is loaded after the first frame, compiled and remembered is no tick's. */
const settling = 300;

const [folder = '', file = '', ticks = ''] = process.argv.slice(2);
const last = settling + Number(ticks);
let before = process.cpuUsage();

await runHurried(folder, (frames, now) => {
  if (frames === settling) before = process.cpuUsage();
  if (frames !== last) return;
  const { user, system } = process.cpuUsage(before);
  const whole = (user + system) / 1000 / Number(ticks);
  setImmediate(() => void tell(whole, now()));
});

/** @param {number} whole @param {number} from */
async function tell(whole, from) {
  writeFileSync(file, JSON.stringify({ whole, ...(await windowsAlone(from)) }));
  process.kill(process.pid, 'SIGKILL');
}

/**
 * The state of every window of every piece, whether it can be seen or not, which pings are due and when the next is:
 * anew for each second, on the bench as the screen leaves it and with the same warm code.
 *
 * @param {number} from
 */
async function windowsAlone(from) {
  const opened = await openStore(folder, { clock: { now: () => from, today: () => '2026-01-01' } });
  if (!opened.ok) throw new Error(opened.problem.says);
  const { bench: facts, conditions, settings } = opened.value;
  const bench = foldBench(facts);
  const shop = shopOf(settings, { zone: 'Europe/London', locale: 'en-GB' });
  const sense = senseIn(shop, settings, readingsOf(conditions));
  const claimed = new Set();
  const pieces = [...bench.pieces.values()];
  // The program works them out once too, and anew only where a fact touched the piece.
  const windows = pieces.flatMap((piece) => windowsOfPiece(piece, bench.sessions, sense));
  const times = Array.from({ length: Number(ticks) }, (_, tick) => {
    const at = from + tick * 1000;
    const began = performance.now();
    for (const window of windows) stateAt(window, at);
    sendingsDue(bench, claimed, at, sense);
    nextPingAt(bench, claimed, at, sense);
    return performance.now() - began;
  });
  return { windows: windows.length, pieces: pieces.length, alone: median(times) };
}
