import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { openForWriting, openStore } from '../../src/persist/index.ts';
import { programs } from './children/programs.ts';
import { benchOfSize, noon } from './facts.ts';

export type KillCount = {
  readonly kills: number;
  /** Changes that the killed processes had confirmed. */
  readonly confirmed: number;
  /** Of those, how many were not there afterwards. */
  readonly lost: number;
  /** Openings that found a damaged or missing file. */
  readonly damaged: number;
};

const clock = { now: () => noon, today: () => '2026-11-24' };

/**
 * Kills processes with SIGKILL while they append without pause to a store of `bytes`, each at another moment of a
 * change, and counts what that cost.
 *
 * @param folder an empty one
 */
export async function killWhileWriting(
  folder: string,
  kills: number,
  bytes: number,
): Promise<KillCount> {
  const store = await openForWriting(folder, { clock });
  if (!store.ok) throw new Error(store.problem.says);
  const before = store.value.change(() => ({
    append: { bench: benchOfSize(bytes) },
    result: null,
  }));
  if (!before.ok) throw new Error(before.problem.says);
  store.value.close();
  const confirmed: string[] = [];
  let damaged = 0;
  for (let kill = 0; kill < kills; kill++) {
    // Moments spread evenly over the few milliseconds that a change takes, after a first one has gone through.
    confirmed.push(...(await idsUntilKilled(folder, `kill${kill}-`, (kill % 25) * 0.4)));
    const opened = await openStore(folder, { clock });
    if (!opened.ok || opened.value.notices.length > 0) damaged += 1;
  }
  const after = await openStore(folder, { clock });
  const kept = new Set(after.ok ? after.value.bench.map(({ id }) => id) : []);
  return {
    kills,
    confirmed: confirmed.length,
    lost: confirmed.filter((id) => !kept.has(id)).length,
    damaged,
  };
}

async function idsUntilKilled(
  folder: string,
  prefix: string,
  afterMs: number,
): Promise<readonly string[]> {
  const child = spawn(process.execPath, [programs.appendMany, folder, prefix, '100000'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const closed = once(child, 'close');
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => {
    if (said === '') {
      const until = performance.now() + afterMs;
      while (performance.now() < until);
      child.kill('SIGKILL');
    }
    said += chunk.toString();
  });
  await closed;
  if (child.signalCode !== 'SIGKILL')
    throw new Error(`the writer ended by itself (${child.exitCode})`);
  // A torn last line was written by a change that was confirmed, but can't be named.
  return said.split('\n').slice(0, -1);
}
