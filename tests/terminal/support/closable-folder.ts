import { chmodSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { mountingFails, newDisk } from '../../persist/mounted.ts';
import { temporaryFolder } from './terminal.ts';

/** A folder that can be closed to the program that runs on it, and opened again. */
export type ClosableFolder = {
  readonly folder: string;
  readonly close: () => void;
  readonly open: () => void;
};

const isRoot = process.getuid?.() === 0;

/** Why no folder can be closed here; null where it can. */
export const closingFails: string | null =
  process.platform === 'win32'
    ? 'rights are told in another way there'
    : isRoot && mountingFails !== null
      ? `rights don't bind root, and there is ${mountingFails}`
      : null;

/** Rights don't bind root, whose folder lies on a disk of its own and is made immutable instead. */
export function closableFolder(): ClosableFolder {
  if (isRoot) {
    const disk = newDisk(1024 * 1024);
    const folder = join(disk.folder, 'store');
    mkdirSync(folder);
    return { folder, close: () => disk.refuse(folder), open: () => disk.allow(folder) };
  }
  const folder = temporaryFolder();
  mkdirSync(folder);
  const open = (): void => chmodSync(folder, 0o700);
  onTestFinished(open);
  return { folder, close: () => chmodSync(folder, 0o500), open };
}
