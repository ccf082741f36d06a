/**
 * The program's own screen through many ticks in a row: `node --expose-gc long-run.mjs FOLDER FILE TICKS...`. After each
 * number of ticks the heap is collected and its size written to FILE, a line of JSON each.
 */
import { appendFileSync } from 'node:fs';
import { runHurried } from './hurried-screen.mjs';

const [folder = '', file = '', ...ticks] = process.argv.slice(2);
const wanted = ticks.map(Number);

await runHurried(folder, (frames, now) => {
  if (frames !== wanted[0]) return;
  wanted.shift();
  setImmediate(() => {
    globalThis.gc?.();
    globalThis.gc?.();
    const { heapUsed, rss } = process.memoryUsage();
    appendFileSync(file, `${JSON.stringify({ frames, heapUsed, rss, simulated: now() })}\n`);
    if (wanted.length === 0) process.kill(process.pid, 'SIGKILL');
  });
});
