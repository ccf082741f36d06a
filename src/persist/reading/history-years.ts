import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { historyFolder } from '../folder/names.ts';

/** Years of which there is a history, the first first; also one whose file is lost but has an earlier generation. */
export function historyYears(folder: string): readonly number[] {
  let names: readonly string[];
  try {
    names = readdirSync(join(folder, historyFolder));
  } catch {
    return [];
  }
  const years = names.flatMap((name) => /^(\d{4})(?:\.prev)?\.json$/.exec(name)?.[1] ?? []);
  return [...new Set(years.map(Number))].sort((one, other) => one - other);
}
