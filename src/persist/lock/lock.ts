import { chmodSync, existsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import type { Milliseconds } from '../../tracker/time/index.ts';
import { identify } from '../file/identity.ts';
import { lockPath } from '../folder/names.ts';
import { bad, type Result, type StoreProblem } from '../result.ts';
import { loadSqlite } from './sqlite.ts';

/** Keeps every other process out of the store while some work is done. */
export type Lock = {
  /** Waits for its turn, up to about `patience` (milliseconds). */
  readonly hold: <T>(work: () => Result<T>, patience?: Milliseconds) => Result<T>;
  readonly close: () => void;
};

/** Nothing that holds the lock takes longer than this, unless it hangs. */
const usualPatience: Milliseconds = 5000;
/**
 * SQLite's own waiting sleeps longer from one look to the next, up to 20 ms. A change takes a few milliseconds and a look
 * a few hundredths of one, so looking every millisecond at first finds a freed lock sooner and costs nothing that counts.
 */
const firstLooks: Milliseconds = 100;
const betweenFirstLooks: Milliseconds = 1;
const betweenLooks: Milliseconds = 5;

// Primary result codes of SQLite.
const busy = new Set([5, 6]);
const notADatabase = 26;

/**
 * A lock that frees itself when its holder dies: a write transaction that writes nothing. SQLite holds it by a lock
 * of the operating system on lock.sqlite, which ends with the process. That file must never be opened in any other way
 * here: closing it would let the lock go.
 */
export function openLock(folder: string): Lock {
  const path = lockPath(folder);
  let open: { readonly database: DatabaseSync; readonly inode: number } | null = null;
  let isHeld = false;

  const close = () => {
    open?.database.close();
    open = null;
  };

  /** The file may have been taken away, and made anew by another process, since it was opened. */
  const isStillThere = (): boolean =>
    open !== null && statSync(path, { throwIfNoEntry: false })?.ino === open.inode;

  const take = (): boolean => {
    if (open === null) {
      const database = new (loadSqlite().DatabaseSync)(path);
      open = { database, inode: statSync(path).ino };
      chmodSync(path, 0o600);
      // Without a journal on the disk the lock works on a full one, and a killed holder leaves nothing behind.
      database.exec('PRAGMA busy_timeout = 0; PRAGMA journal_mode = MEMORY');
    }
    open.database.exec('BEGIN IMMEDIATE');
    if (isStillThere()) return true;
    close();
    return false;
  };

  return {
    close,
    hold(work, patience = usualPatience) {
      if (isHeld) throw new Error('the lock of the store was asked for by its own holder');
      const link = identify(path);
      if (!link.ok) return link;
      for (let waited = 0; ;) {
        try {
          if (take()) break;
        } catch (error) {
          if (!busy.has(primaryCode(error))) {
            close();
            return { ok: false, problem: lockProblem(path, error) };
          }
        }
        if (waited >= patience) return { ok: false, problem: busyProblem(folder) };
        const pause = waited < firstLooks ? betweenFirstLooks : betweenLooks;
        sleep(pause);
        waited += pause;
      }
      isHeld = true;
      try {
        return work();
      } finally {
        isHeld = false;
        open?.database.exec('ROLLBACK');
      }
    },
  };
}

/** The lock is held for so short a time that the whole process may wait for it. */
function sleep(ms: Milliseconds): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
}

const primaryCode = (error: unknown): number =>
  error instanceof Error && 'errcode' in error ? Number(error.errcode) & 0xff : -1;

const busyProblem = (folder: string): StoreProblem => ({
  kind: 'busy',
  file: folder,
  says: `Not stored: another recoat kept ${folder} locked for 5 seconds.`,
  todo: 'Look for one that hangs or is suspended, end it, and do this again.',
});

function lockProblem(path: string, error: unknown): StoreProblem {
  const folder = dirname(path);
  if (!existsSync(folder)) {
    return bad(
      'gone',
      folder,
      `Not stored: the folder ${folder} is not there any more.`,
      'Put it back, or start recoat again.',
    ).problem;
  }
  if (primaryCode(error) === notADatabase) {
    return bad(
      'damaged',
      path,
      `Not stored: ${path}, which only keeps two recoats apart, is damaged.`,
      'Close every recoat and remove that file; nothing is kept in it.',
    ).problem;
  }
  const reason = error instanceof Error ? error.message : String(error);
  return bad(
    'unwritable',
    path,
    `Not stored: ${path} can't be locked (${reason}).`,
    'Check that the folder is yours, writable, and on a disk of this machine.',
  ).problem;
}
