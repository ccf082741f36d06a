import { existsSync, lstatSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { CalendarDay } from '../../tracker/time/index.ts';
import { copyDurably, makeFolder } from '../file/durable.ts';
import { backupFolder, backupPath, benchFile, filePath } from '../folder/names.ts';
import type { Notice } from '../result.ts';
import { backupNames } from '../reading/leftovers.ts';

const keptBackups = 10;

/**
 * Before the first change of a day, copies the bench file as it then is; keeps the last ten such days. A backup that
 * can't be made keeps no key press from being stored: it is told.
 *
 * @returns what went wrong, if anything
 */
export function backUpOnceADay(folder: string, day: CalendarDay): Notice | null {
  const source = filePath(folder, benchFile);
  const target = backupPath(folder, day);
  try {
    if (isThere(target) || !existsSync(source)) return null;
    makeFolder(join(folder, backupFolder));
    copyDurably(source, target);
    for (const name of backupNames(folder).slice(keptBackups)) {
      rmSync(join(folder, backupFolder, name));
    }
    return null;
  } catch (error) {
    return {
      file: target,
      says: `The backup ${target} could not be made (${error instanceof Error ? error.message : String(error)}).`,
      todo: 'Check the disk. The bench itself was stored.',
    };
  }
}

/** A link with that name is no backup of the day: the copy takes its place. */
const isThere = (backup: string): boolean =>
  existsSync(backup) && !lstatSync(backup).isSymbolicLink();
