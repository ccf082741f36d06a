import { spawn } from '@lydell/node-pty';

/** Ink ends every frame with this: synchronized output is over. */
export const frameEnd = '\u001b[?2026l';

/**
 * A program in a pseudo-terminal.
 *
 * @param {{file: string, args?: readonly string[], env: Record<string, string>, columns?: number, rows?: number}} program
 */
export function openTerminal({ file, args = [], env, columns = 80, rows = 24 }) {
  const began = performance.now();
  const child = spawn(process.execPath, [file, ...args], {
    name: 'xterm-256color',
    cols: columns,
    rows,
    cwd: process.cwd(),
    env,
  });
  let output = '';
  let bytes = 0;
  let ended = false;
  /** @type {Set<() => void>} */
  const listeners = new Set();
  const told = () => {
    for (const listener of [...listeners]) listener();
  };
  child.onData((data) => {
    output += data;
    bytes += Buffer.byteLength(data);
    told();
  });
  child.onExit(() => {
    ended = true;
    told();
  });
  return {
    began,
    pid: child.pid,
    bytes: () => bytes,
    ended: () => ended,
    /** What was written since this was last called. */
    take: () => {
      const taken = output;
      output = '';
      return taken;
    },
    /** @param {string} text */
    write: (text) => child.write(text),
    /**
     * Waits until that can be seen in what was written since the last `take`.
     *
     * @param {(output: string) => boolean} isSo
     * @returns {Promise<number>} when, on the clock of `performance.now`
     */
    until: (isSo) =>
      new Promise((/** @type {(at: number) => void} */ resolve, reject) => {
        const patience = setTimeout(() => {
          listeners.delete(look);
          reject(
            new Error(
              `waited 15 s for the program, which last wrote ${JSON.stringify(output.slice(-200))}`,
            ),
          );
        }, 15_000);
        const look = () => {
          const now = performance.now();
          if (!isSo(output) && !ended) return;
          listeners.delete(look);
          clearTimeout(patience);
          if (isSo(output)) resolve(now);
          else
            reject(
              new Error(`the program ended; it last wrote ${JSON.stringify(output.slice(-200))}`),
            );
        };
        listeners.add(look);
        look();
      }),
    /** @returns {Promise<void>} */
    end: () =>
      new Promise((resolve) => {
        if (ended) return resolve();
        listeners.add(() => {
          if (ended) resolve();
        });
        child.kill('SIGKILL');
      }),
  };
}
