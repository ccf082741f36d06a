import { accessSync, constants } from 'node:fs';
import type { Milliseconds } from '../../tracker/time/index.ts';
import type { FileForm } from '../file/form.ts';
import { historyFile } from '../folder/names.ts';
import { openLock } from '../lock/lock.ts';
import { good, type Notice, type Result } from '../result.ts';
import type { History, StoreClock } from '../store.ts';
import { readParts, type Parts } from './assemble.ts';
import { loadFile } from './load-file.ts';

export type ReadingPlace = {
  readonly folder: string;
  readonly form: FileForm;
  readonly clock: Pick<StoreClock, 'now'>;
};

type LiveFiles = { readonly parts: Parts; readonly notices: readonly Notice[] };

/** A reader waits a second at most to mend; then it reads what it can and leaves mending to others. */
const readerPatience: Milliseconds = 1000;

/** Reads the live files, of which some need checking or mending. */
export const readLiveCarefully = (place: ReadingPlace): Result<LiveFiles> =>
  readCarefully(place, (mayWrite) => {
    const notices: Notice[] = [];
    const parts = readParts<never>((file) => {
      const read = loadFile({ ...place, mayWrite }, file);
      if (read.ok && read.value.notice) notices.push(read.value.notice);
      return read;
    });
    return parts.ok ? good({ parts: parts.value, notices }) : parts;
  });

export const readHistory = (place: ReadingPlace, year: number): Result<History> =>
  readCarefully(place, (mayWrite) => {
    const read = loadFile({ ...place, mayWrite }, historyFile(year));
    if (!read.ok) return read;
    const { contents, notice } = read.value;
    return good({ facts: contents, notices: notice ? [notice] : [] });
  });

/** Only reads at first. What needs mending is read again under the lock and mended, where that can be. */
function readCarefully<Read extends { readonly notices: readonly Notice[] }>(
  { folder }: ReadingPlace,
  read: (mayWrite: boolean) => Result<Read>,
): Result<Read> {
  const asItIs = read(false);
  if (!asItIs.ok || asItIs.value.notices.length === 0 || !isWritable(folder)) return asItIs;
  const lock = openLock(folder);
  try {
    const mended = lock.hold(() => read(true), readerPatience);
    return mended.ok ? mended : asItIs;
  } finally {
    lock.close();
  }
}

export function isWritable(folder: string): boolean {
  try {
    accessSync(folder, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}
