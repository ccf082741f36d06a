import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { presentForm } from '../file/form.ts';
import { unreadable } from '../file/identity.ts';
import { filePath, settingsFile } from '../folder/names.ts';
import { inspect } from '../reading/inspect.ts';
import { bad, good, type Notice, type Result } from '../result.ts';
import { checkContents } from '../schemas/check.ts';
import type { OpenedStore } from '../store.ts';
import type { BenchFact } from '../../tracker/bench/index.ts';
import { ownName, type Exported } from './exported.ts';

export type Gathered = { readonly exported: Exported; readonly notices: readonly Notice[] };

/**
 * All that a store holds. The years are read after the bench: a piece that leaves meanwhile is found twice, never missed.
 *
 * @param ownFolder where the user's own schedules and products lie; it need not be there
 */
export async function gather(opened: OpenedStore, ownFolder: string): Promise<Result<Gathered>> {
  const notices: Notice[] = [];
  const years = new Map<number, readonly BenchFact[]>();
  for (const year of opened.historyYears()) {
    const history = await opened.readHistory(year);
    if (!history.ok) return history;
    notices.push(...history.value.notices);
    years.set(year, history.value.facts);
  }
  const own = readOwn(ownFolder);
  if (!own.ok) return own;
  const settings = rawSettings(opened);
  if (!settings.ok) return settings;
  const { bench, conditions, pings } = opened;
  return good({
    exported: { bench, conditions, pings, settings: settings.value, years, own: own.value },
    notices,
  });
}

function rawSettings({ folder, settings }: OpenedStore): Result<Exported['settings']> {
  const found = inspect(filePath(folder, settingsFile), 'settings', presentForm, checkContents);
  if (!found.ok) return found;
  if (found.value.is === 'fine') return good(found.value.contents);
  // What stands in for a damaged file is known; that it is damaged was told when the store was opened.
  return good(found.value.is === 'absent' ? {} : settings);
}

export function readOwn(folder: string): Result<ReadonlyMap<string, string>> {
  const own = new Map<string, string>();
  let path = folder;
  try {
    for (const name of namesIn(folder)) {
      path = join(folder, name);
      const bytes = readFileSync(path);
      const text = bytes.toString('utf8');
      if (!Buffer.from(text).equals(bytes)) return noText(path);
      own.set(name, text);
    }
    return good(own);
  } catch (error) {
    return unreadable(path, error);
  }
}

const namesIn = (folder: string): readonly string[] => {
  try {
    return readdirSync(folder)
      .filter((name) => ownName.test(name))
      .sort();
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
    throw error;
  }
};

const noText = (path: string) =>
  bad(
    'unreadable',
    path,
    `Not read: ${path} holds bytes that are no text in UTF-8.`,
    'Save it as UTF-8, or move it away.',
  );
