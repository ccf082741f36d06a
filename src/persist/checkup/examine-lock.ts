import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import type { Milliseconds } from '../../tracker/time/index.ts';
import { partEnding } from '../file/durable.ts';
import { lockPath } from '../folder/names.ts';
import { openLock } from '../lock/lock.ts';
import { good } from '../result.ts';
import { findingsAbout, type Finding } from './finding.ts';

const { fine, note, wrong } = findingsAbout('lock');

/** No change takes longer, unless its process hangs. */
const patience: Milliseconds = 1000;

/** Whether the store can be locked, who keeps it locked, and what processes that died left behind. */
export function examineLock(folder: string): readonly Finding[] {
  return [...lockItself(folder), ...orphans(folder)];
}

function lockItself(folder: string): readonly Finding[] {
  const path = lockPath(folder);
  if (!existsSync(path)) return [];
  const lock = openLock(folder);
  try {
    const held = lock.hold(() => good(null), patience);
    if (held.ok) return [fine('The store can be locked, and nobody keeps it locked.')];
    if (held.problem.kind !== 'busy') return [wrong(held.problem.says, held.problem.todo)];
    const holders = holdersOf(path);
    const by =
      holders.length === 0 ? 'another process' : `process ${holders.map(String).join(', ')}`;
    return [
      wrong(
        `The store has been locked for a second by ${by}.`,
        'Look whether it hangs or is suspended, and end it. The lock goes with it.',
      ),
    ];
  } finally {
    lock.close();
  }
}

/** Linux lists every lock with its process and file (proc(5), /proc/locks); elsewhere nobody is named. */
function holdersOf(path: string): readonly number[] {
  try {
    const { ino } = statSync(path);
    const holders = readFileSync('/proc/locks', 'utf8')
      .split('\n')
      .map((line) => /^\d+: \S+\s+\S+\s+WRITE (\d+) [\da-f]+:[\da-f]+:(\d+) /.exec(line))
      .filter((found) => found?.[2] === String(ino))
      .map((found) => Number(found?.[1]))
      .filter((pid) => pid > 0 && pid !== process.pid);
    return [...new Set(holders)];
  } catch {
    return [];
  }
}

function orphans(folder: string): readonly Finding[] {
  let names: readonly string[] = [];
  try {
    names = readdirSync(folder).filter(
      (name) => name.includes('.json.tmp-') || name.endsWith(partEnding),
    );
  } catch {
    // Whoever reads the folder itself tells it.
  }
  return names.length === 0
    ? []
    : [
        note(
          `A process died while it wrote, and left ${names.join(', ')}.`,
          'The next change takes that away; nothing that was confirmed is in it alone.',
        ),
      ];
}
