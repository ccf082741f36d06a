import {
  chmodSync,
  closeSync,
  copyFileSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { errorCode } from './identity.ts';

/** Ending of files that are being made; one that is found later was left by a process that died. */
export const partEnding = '.part';

/**
 * Makes the folder, and those above it, if they are not there; only the owner may look inside. Returns when what it made
 * is on the disk.
 */
export function makeFolder(path: string): void {
  const first = mkdirSync(path, { recursive: true, mode: 0o700 });
  if (first === undefined) return;
  for (let made = path; made.length >= first.length; made = dirname(made)) {
    syncFolder(dirname(made));
  }
}

/** Returns when the names in the folder are on the disk too: a file whose name is lost is lost. */
export function syncFolder(path: string): void {
  // Windows has no way to do this; its file system keeps names in a journal.
  if (process.platform === 'win32') return;
  syncPath(path);
}

function syncPath(path: string): void {
  const opened = openSync(path, 'r');
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

/**
 * Gives the file a second name, over whatever had that name. It costs no room and can't be cut short. Where links
 * can't be made, a full copy takes its place.
 */
export function duplicate(from: string, to: string): void {
  const part = `${to}${partEnding}`;
  rmSync(part, { force: true });
  if (!linked(from, part)) copyInto(from, part);
  renameSync(part, to);
  // Renaming a file over a second name of itself keeps both names.
  rmSync(part, { force: true });
}

/** Puts a copy that shares nothing with the first in place of `to`, and returns when it is on the disk. */
export function copyDurably(from: string, to: string): void {
  const part = `${to}${partEnding}`;
  rmSync(part, { force: true });
  copyInto(from, part);
  renameSync(part, to);
  syncFolder(dirname(to));
}

export function writeDurably(path: string, text: string): void {
  const part = `${path}${partEnding}`;
  rmSync(part, { force: true });
  writeFileSync(part, text, { mode: 0o600, flag: 'wx', flush: true });
  renameSync(part, path);
  syncFolder(dirname(path));
}

function linked(from: string, to: string): boolean {
  // On Windows conf may fall back to writing into the file itself, which would change a linked copy with it.
  if (process.platform === 'win32') return false;
  try {
    linkSync(from, to);
    return true;
  } catch (error) {
    if (['ENOSPC', 'EDQUOT', 'EROFS', 'ENOENT', 'EIO'].includes(errorCode(error))) throw error;
    return false;
  }
}

function copyInto(from: string, part: string): void {
  try {
    copyFileSync(from, part);
    chmodSync(part, 0o600);
    syncPath(part);
    if (!readFileSync(part).equals(readFileSync(from))) {
      throw Object.assign(new Error(`${part} was cut short`), { code: 'ENOSPC' });
    }
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}
