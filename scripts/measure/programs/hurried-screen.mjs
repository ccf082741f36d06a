import { join } from 'node:path';
import { openStore } from '../../../src/persist/index.ts';
import { runScreen } from '../../../src/shell/screen.tsx';

/** Ink draws at most this often, so a tick that comes sooner would share its frame with the next. */
const frameGap = 9;
const longWait = 200;

/**
 * Runs the program's own screen on a clock that doesn't wait: whenever the program would sleep until the next second,
 * that second has come once the frame is out. Short waits take their time.
 *
 * @param {string} folder of the store
 * @param {(frames: number, now: () => number) => void} framed told after each frame, with how many there were
 */
export async function runHurried(folder, framed) {
  /** How much sooner than on any other clock it is here. */
  let skipped = 0;
  const now = () => Date.now() + skipped;
  const wait = /** @type {(work: () => void, ms: number) => NodeJS.Timeout} */ (
    /** @type {unknown} */ (globalThis.setTimeout)
  );
  /** @param {(...words: unknown[]) => void} work @param {number} [ms] @param {unknown[]} words */
  const hurried = (work, ms = 0, ...words) => {
    if (ms < longWait) return wait(() => work(...words), ms);
    return wait(() => {
      skipped += ms - frameGap;
      work(...words);
    }, frameGap);
  };
  Object.assign(globalThis, { setTimeout: hurried });

  let frames = 0;
  const write = process.stdout.write.bind(process.stdout);
  process.stdout.write = /** @type {typeof process.stdout.write} */ (
    (/** @type {string} */ bytes, /** @type {any[]} */ ...rest) => {
      if (String(bytes).includes('\u001b[?2026h')) framed((frames += 1), now);
      return write(bytes, ...rest);
    }
  );

  const clock = { now, uptime: () => null, bootId: null };
  const opened = await openStore(folder, { clock: { now, today: () => '2026-01-01' } });
  if (!opened.ok) throw new Error(opened.problem.says);
  let ids = 0;
  await runScreen({
    opened: opened.value,
    world: {
      clock,
      newId: () => `hurried-${(ids += 1)}`,
      env: process.env,
      platform: process.platform,
      home: '/',
      cwd: '/',
      here: { zone: 'Europe/London', locale: 'en-GB' },
      packageFolder: join(import.meta.dirname, '..'),
      version: '0',
      interactive: true,
      print: () => undefined,
      printError: () => undefined,
    },
  });
}
