import type { ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';

/**
 * Ends a child at once, and what it started: ending only the shell around a command leaves the command behind.
 * Descendants are known where Linux lists them under /proc; elsewhere only the child itself is ended.
 */
export function endChild(child: ChildProcess): void {
  // The number of a child that is gone may belong to somebody else by now.
  if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
  for (const pid of descendantsOf(child.pid)) {
    try {
      process.kill(pid, 'SIGKILL');
    } catch {
      // It has just gone by itself.
    }
  }
  child.kill('SIGKILL');
}

function descendantsOf(pid: number): readonly number[] {
  let list: string;
  try {
    list = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8');
  } catch {
    return [];
  }
  const children = list
    .split(' ')
    .filter((word) => /^\d+$/.test(word))
    .map(Number);
  return children.flatMap((child) => [...descendantsOf(child), child]);
}
