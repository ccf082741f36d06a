import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { identify } from '../file/identity.ts';
import { loadSqlite } from '../lock/sqlite.ts';

/**
 * Who is there: screens, of which several may be open, and the one keeper. Each holds a lock of SQLite's for as long as
 * it lives, on a file that keeps nothing. The operating system takes the lock away with the process, however that ends.
 */
export type Presence = { readonly leave: () => void };

const screensPath = (folder: string): string => join(folder, 'screens.sqlite');
const keeperPath = (folder: string): string => join(folder, 'keeper.sqlite');

/** A question of another process takes a moment; whoever comes meanwhile waits for it. */
const waitMs = 500;

/** Null where the folder takes no such file: a screen is shown all the same, and a keeper can't know of it. */
export function presentAsScreen(folder: string): Presence | null {
  return hold(screensPath(folder), (database) => {
    database.exec('BEGIN');
    // Reading makes the transaction take its share of the lock, and keep it.
    database.prepare('SELECT count(*) FROM sqlite_schema').get();
  });
}

/** Null while another keeper is there, or where the folder takes no such file. */
export function presentAsKeeper(folder: string): Presence | null {
  return hold(keeperPath(folder), (database) => database.exec('BEGIN EXCLUSIVE'));
}

export const isScreenPresent = (folder: string): boolean => isHeld(screensPath(folder));
export const isKeeperPresent = (folder: string): boolean => isHeld(keeperPath(folder));

/** What is collected as garbage is closed, and with it goes the lock: whoever is there is remembered here. */
const held = new Set<DatabaseSync>();

function hold(path: string, take: (database: DatabaseSync) => void): Presence | null {
  const database = openAt(path, waitMs);
  if (database === null) return null;
  try {
    // Without a journal on the disk a full one stops nothing, and a killed holder leaves nothing behind.
    database.exec('PRAGMA journal_mode = MEMORY');
    take(database);
    held.add(database);
    return {
      leave: () => {
        if (held.delete(database)) database.close();
      },
    };
  } catch {
    database.close();
    return null;
  }
}

/** Primary result codes of SQLite: the lock is somebody else's. */
const busy = new Set([5, 6]);

function isHeld(path: string): boolean {
  const there = identify(path);
  if (!there.ok || there.value === null) return false;
  const database = openAt(path, 0);
  if (database === null) return false;
  try {
    database.exec('BEGIN EXCLUSIVE');
    database.exec('ROLLBACK');
    return false;
  } catch (error) {
    const code = error instanceof Error && 'errcode' in error ? Number(error.errcode) & 0xff : -1;
    return busy.has(code);
  } finally {
    database.close();
  }
}

function openAt(path: string, busyTimeout: number): DatabaseSync | null {
  if (!identify(path).ok) return null;
  try {
    const database = new (loadSqlite().DatabaseSync)(path);
    chmodSync(path, 0o600);
    database.exec(`PRAGMA busy_timeout = ${busyTimeout}`);
    return database;
  } catch {
    return null;
  }
}
