import { existsSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { backupFolder, backupName, previousPath, type StoreFile } from '../folder/names.ts';

/** An earlier state of a file. `told` names it to the user. */
export type Leftover = { readonly path: string; readonly told: string; readonly since: string };

/** Earlier states of a file, the latest first: the previous generation, then for the bench its daily backups. */
export function leftovers(folder: string, file: StoreFile): readonly Leftover[] {
  const previous = previousPath(folder, file);
  const found: Leftover[] = [];
  if (existsSync(previous)) {
    found.push({ path: previous, told: basename(previous), since: 'the change before last' });
  }
  if (file.name !== 'bench') return found;
  for (const name of backupNames(folder)) {
    found.push({
      path: join(folder, backupFolder, name),
      told: `${backupFolder}/${name}`,
      since: 'that morning',
    });
  }
  return found;
}

/** Names of the daily backups, the latest first. */
export function backupNames(folder: string): readonly string[] {
  try {
    return readdirSync(join(folder, backupFolder))
      .filter((name) => backupName.test(name))
      .sort()
      .reverse();
  } catch {
    return [];
  }
}
