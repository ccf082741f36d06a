import { readdirSync } from 'node:fs';
import { backupFolder, historyFolder, liveFiles } from './names.ts';

/** Whether a folder holds anything of a store, be it a file set aside or a year of history. */
export function hasStore(folder: string): boolean {
  const begins = [...liveFiles.map(({ name }) => `${name}.`), 'lock.'];
  try {
    return readdirSync(folder).some(
      (entry) =>
        entry === historyFolder ||
        entry === backupFolder ||
        begins.some((beginning) => entry.startsWith(beginning)),
    );
  } catch (error) {
    // What is there and can't be looked into is told by who reads it.
    return !isAbsent(error);
  }
}

const isAbsent = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'ENOENT';
