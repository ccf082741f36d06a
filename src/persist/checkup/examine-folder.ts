import { readdirSync, statfsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { looksSynced } from '../folder/synced-folder.ts';
import { isWritable } from '../reading/careful.ts';
import { findingsAbout, type Finding } from './finding.ts';

const { fine, wrong } = findingsAbout('folder');

const megabyte = 1024 * 1024;
/** Every change writes a file whole, beside the one before. */
const leastFree = 20 * megabyte;

export type DiskQuestions = {
  /** Bytes that may still be written on the disk of a folder; null where the system doesn't say. */
  readonly freeBytes: (folder: string) => number | null;
  readonly isSynced: (folder: string) => boolean;
};

export const diskQuestions: DiskQuestions = {
  freeBytes: (folder) => {
    try {
      const { bavail, bsize } = statfsSync(folder);
      return bavail * bsize;
    } catch {
      return null;
    }
  },
  isSynced: looksSynced,
};

/** Whether the data folder is the user's alone, can be written, has room, and is changed by nobody behind the lock. */
export function examineFolder(
  folder: string,
  { freeBytes, isSynced }: DiskQuestions = diskQuestions,
): readonly Finding[] {
  const findings: Finding[] = [];
  if (!isWritable(folder))
    findings.push(
      wrong(
        `${folder} can't be written.`,
        'Check whose it is, its rights, and whether its disk can only be read.',
      ),
    );
  const open = openToOthers(folder);
  if (open.length > 0)
    findings.push(
      wrong(
        `Others on this machine can read ${open.slice(0, 5).join(', ')}${open.length > 5 ? ` and ${open.length - 5} more` : ''}.`,
        `Take their rights away: chmod -R go= '${folder}'`,
      ),
    );
  if (isSynced(folder))
    findings.push(
      wrong(
        `${folder} lies in a folder that a program keeps alike on several machines. It replaces files behind the lock, and two machines that write lose one's work.`,
        'Keep the data elsewhere, and carry it over with recoat export and recoat import.',
      ),
    );
  const free = freeBytes(folder);
  if (free !== null && free < leastFree)
    findings.push(
      wrong(
        `Only ${Math.floor(free / megabyte)} MB are free on the disk of ${folder}.`,
        'Make room: what finds none is not recorded.',
      ),
    );
  if (findings.length > 0) return findings;
  const room = free === null ? '' : `, with ${roomWords(free)} free`;
  return [fine(`${folder} is yours alone and can be written${room}.`)];
}

const roomWords = (bytes: number): string =>
  bytes < 1024 * megabyte
    ? `${Math.floor(bytes / megabyte)} MB`
    : `${Math.floor(bytes / (1024 * megabyte))} GB`;

/** Names of files and folders that others have a right to. Windows keeps rights in another way. */
function openToOthers(folder: string): readonly string[] {
  if (process.platform === 'win32') return [];
  const isOpen = (path: string): boolean =>
    ((statSync(path, { throwIfNoEntry: false })?.mode ?? 0) & 0o077) !== 0;
  try {
    // Behind a folder that is closed the rights of a file let nobody in.
    if (!isOpen(folder)) return [];
    const inside = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(json|ya?ml)$/.test(name))
      .filter((name) => isOpen(join(folder, name)));
    return inside.length === 0 ? [] : [folder, ...inside.sort()];
  } catch {
    return [];
  }
}
