import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, isAbsolute, join } from 'node:path';

/** Where a program lies that is started by this name; null where there is none. */
export function findProgram(
  name: string,
  { PATH = '', PATHEXT = '' }: NodeJS.ProcessEnv,
): string | null {
  const endings = ['', ...PATHEXT.split(';').filter((ending) => ending !== '')];
  const places =
    isAbsolute(name) || /[/\\]/.test(name)
      ? [name]
      : PATH.split(delimiter)
          .filter((folder) => folder !== '')
          .map((folder) => join(folder, name));
  return places.flatMap((place) => endings.map((ending) => place + ending)).find(canRun) ?? null;
}

function canRun(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
