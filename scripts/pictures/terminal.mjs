import { setTimeout as wait } from 'node:timers/promises';
import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';

const toldClock = import.meta.resolve('./told-clock.mjs');

/** Longer than a ticker's longest wait. */
const patience = 20_000;

/**
 * The built program in a pseudo-terminal, with an emulator that shows what a person would see.
 *
 * @param {{start: string, args: readonly string[], columns: number, rows: number, stage: import('./stage.mjs').Stage}} options
 */
export function openTerminal({ start, args, columns, rows, stage }) {
  const emulator = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true });
  const child = spawn(process.execPath, ['--import', toldClock, start, ...args], {
    name: 'xterm-256color',
    cols: columns,
    rows,
    cwd: stage.folder,
    env: stage.environment,
  });
  let written = 0;
  let ended = false;
  child.onData((data) => {
    written += data.length;
    emulator.write(data);
  });
  child.onExit(() => {
    ended = true;
  });
  const text = () =>
    Array.from({ length: rows }, (_, row) => line(row)?.translateToString(true) ?? '').join('\n');
  /** @param {number} row */
  const line = (row) => emulator.buffer.active.getLine(emulator.buffer.active.baseY + row);

  /** Until nothing more is written. */
  const settles = async () => {
    for (let before = -1; before !== written;) {
      before = written;
      await wait(150);
    }
  };
  return {
    emulator,
    settles,
    /** @param {string} words */
    shows: async (words) => {
      for (const began = performance.now(); !text().includes(words); await wait(20)) {
        if (ended || performance.now() - began > patience)
          throw new Error(`waited in vain for "${words}"; the screen shows\n${text()}`);
      }
      await settles();
    },
    /**
     * One key, two seconds by the told clock after the one before: no guard takes it for a glove.
     *
     * @param {string} key
     */
    press: async (key) => {
      await stage.pass(2);
      const before = written;
      child.write(key);
      // Not every key changes the screen; on a busy machine those that do may take a while.
      for (const began = performance.now(); before === written; await wait(20)) {
        if (performance.now() - began > 1500) break;
      }
      await settles();
    },
    end: async () => {
      child.kill('SIGKILL');
      while (!ended) await wait(10);
      emulator.dispose();
    },
  };
}
