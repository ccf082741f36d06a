import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Instant } from '../../tracker/time/index.ts';

/** Left by a keeper when it begins and taken away when it ends in order: where it stands without one, that one died. */
export type KeeperMark = { readonly pid: number; readonly began: Instant };

const markPath = (folder: string): string => join(folder, 'keeper.json');

/** A mark that can't be written is no reason not to keep watch. */
export function leaveKeeperMark(folder: string, mark: KeeperMark): void {
  try {
    // Whatever has that name, a link to somewhere else perhaps, is not written into.
    takeKeeperMark(folder);
    writeFileSync(markPath(folder), `${JSON.stringify(mark)}\n`, { mode: 0o600, flag: 'wx' });
  } catch {
    // On a full disk it still pings.
  }
}

export function takeKeeperMark(folder: string): void {
  rmSync(markPath(folder), { force: true });
}

/** Null where there is none, or where it can't be made out. */
export function readKeeperMark(folder: string): KeeperMark | null {
  try {
    const mark = JSON.parse(readFileSync(markPath(folder), 'utf8')) as Partial<KeeperMark> | null;
    return Number.isSafeInteger(mark?.pid) && Number.isFinite(mark?.began)
      ? (mark as KeeperMark)
      : null;
  } catch {
    return null;
  }
}

/** Whether a process of that number runs; perhaps another one by now. Cheap enough for every command. */
export function isRunning({ pid }: KeeperMark): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
