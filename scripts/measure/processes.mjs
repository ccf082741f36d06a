import { spawnSync } from 'node:child_process';
import { readFile, readdir } from 'node:fs/promises';

/**
 * Runs a program to its end.
 *
 * @param {readonly string[]} args of Node
 * @param {Record<string, string>} env
 * @returns {{ms: number, output: string}} from its start to its end
 */
export function runToEnd(args, env) {
  const began = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, args, {
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
    maxBuffer: 64 * 1024 * 1024,
  });
  const ms = performance.now() - began;
  if (status === 0) return { ms, output: stdout.toString() };
  throw new Error(`${args.slice(1).join(' ')} ended with ${status}: ${stderr.toString().trim()}`);
}

/**
 * Processor time that a process and all its threads have had, in milliseconds; Linux only.
 *
 * @param {number} pid
 */
export async function processorTime(pid) {
  let nanoseconds = 0;
  for (const thread of await readdir(`/proc/${pid}/task`)) {
    const told = await readFile(`/proc/${pid}/task/${thread}/schedstat`, 'utf8');
    nanoseconds += Number(told.split(' ')[0]);
  }
  return nanoseconds / 1e6;
}
