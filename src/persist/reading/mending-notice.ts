import { relative } from 'node:path';
import type { Damage } from '../file/document.ts';
import { filePath, type StoreFile } from '../folder/names.ts';
import type { Notice } from '../result.ts';
import type { Leftover } from './leftovers.ts';

export type Outcome = {
  /** Where the damaged file is kept now; null if there was none or it could not be moved. */
  readonly aside: string | null;
  /** What stands in for it. */
  readonly from: Leftover | 'memory' | null;
};

/** Says what was wrong with a file, what became of it and what that may have cost. */
export function mendingNotice(
  { folder, mayWrite }: { readonly folder: string; readonly mayWrite: boolean },
  file: StoreFile,
  damage: Damage | null,
  { aside, from }: Outcome,
): Notice {
  const path = filePath(folder, file);
  const line = damage === null || damage.line === null ? '' : `line ${damage.line}: `;
  const said = [
    damage === null ? `${path} is missing.` : `${path} is damaged: ${line}${damage.says}.`,
    aside === null ? '' : `It was set aside as ${relative(folder, aside)}.`,
    replacement(file, from, mayWrite),
  ];
  return {
    file: path,
    says: said.filter((words) => words !== '').join(' '),
    todo: advice(damage !== null, from),
  };
}

function replacement(file: StoreFile, from: Outcome['from'], mayWrite: boolean): string {
  if (from === null) {
    const start = file.holds === 'settings' ? 'standard settings are used' : 'it starts empty';
    return `There is no good earlier copy, so ${start}.`;
  }
  const copy = from === 'memory' ? 'What recoat had in memory' : from.told;
  if (mayWrite) return `${copy} was put in its place.`;
  return `${copy} is shown instead; nothing was put right, since the folder can't be written now.`;
}

function advice(hasDamagedFile: boolean, from: Outcome['from']): string {
  if (from === 'memory') return 'Nothing that was shown as stored is missing.';
  if (from === null) return 'If you have a copy elsewhere, put it there with recoat closed.';
  const missing = `What was told after ${from.since} is missing.`;
  return hasDamagedFile ? `${missing} Perhaps it can be read in the file set aside.` : missing;
}
