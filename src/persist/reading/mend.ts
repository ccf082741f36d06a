import { existsSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import { copyDurably, syncFolder, writeDurably } from '../file/durable.ts';
import { factsText, settingsText, type Damage } from '../file/document.ts';
import type { FileForm } from '../file/form.ts';
import { writeProblem } from '../file/write-problem.ts';
import {
  damagedPath,
  filePath,
  type Contents,
  type ContentsName,
  type StoreFile,
} from '../folder/names.ts';
import { good, type Notice, type Result } from '../result.ts';
import { checkContents } from '../schemas/check.ts';
import type { StoreClock } from '../store.ts';
import { inspect } from './inspect.ts';
import { leftovers, type Leftover } from './leftovers.ts';
import { mendingNotice } from './mending-notice.ts';

export type MendingPlace = {
  readonly folder: string;
  readonly form: FileForm;
  readonly clock: Pick<StoreClock, 'now'>;
  /** Whether the lock is held and files may be moved; else the best copy is only read. */
  readonly mayWrite: boolean;
};

export type Mended<Name extends ContentsName> = {
  readonly contents: Contents[Name];
  /** The form of the copy that was taken. */
  readonly form: number;
  readonly notice: Notice | null;
};

/** A good earlier state: on the disk, or (the fuller one wins) what this process last saw there. */
type Choice<Name extends ContentsName> = {
  readonly contents: Contents[Name];
  readonly form: number;
  readonly from: Leftover | 'memory';
};

/**
 * Deals with a file that is damaged, or missing although there was one: sets it aside under a name of its own and puts
 * the best earlier state in its place. Never throws anything away.
 *
 * @param damage null if the file is missing
 * @param held what this process last saw in the file, if it did
 */
export function mend<Name extends ContentsName>(
  place: MendingPlace,
  file: StoreFile<Name>,
  damage: Damage | null,
  held: Contents[Name] | null,
): Result<Mended<Name>> {
  const choice = chooseCopy(place, file, held);
  if (!choice.ok) return choice;
  const path = filePath(place.folder, file);
  if (choice.value === null && damage === null && leftovers(place.folder, file).length === 0) {
    return good({ contents: emptyContents(file.holds), form: place.form.current, notice: null });
  }
  let aside: string | null = null;
  if (place.mayWrite) {
    try {
      aside = damage === null ? null : setAside(place, file);
      if (choice.value !== null) putInPlace(place, path, file, choice.value);
    } catch (error) {
      return { ok: false, problem: writeProblem(path, error) };
    }
  }
  return good({
    contents: choice.value?.contents ?? emptyContents(file.holds),
    form: choice.value?.form ?? place.form.current,
    notice: mendingNotice(place, file, damage, { aside, from: choice.value?.from ?? null }),
  });
}

function chooseCopy<Name extends ContentsName>(
  { folder, form }: MendingPlace,
  file: StoreFile<Name>,
  held: Contents[Name] | null,
): Result<Choice<Name> | null> {
  let best: Choice<Name> | null = null;
  for (const leftover of leftovers(folder, file)) {
    const copy = inspect(leftover.path, file.holds, form, checkContents);
    // An older recoat must not answer for what a newer one wrote.
    if (!copy.ok && copy.problem.kind === 'newer') return copy;
    if (!copy.ok || copy.value.is !== 'fine') continue;
    best = { contents: copy.value.contents, form: copy.value.form, from: leftover };
    break;
  }
  if (held !== null && (best === null || hasAllOf(held, best.contents))) {
    return good({ contents: held, form: form.current, from: 'memory' });
  }
  return good(best);
}

function hasAllOf(held: Contents[ContentsName], other: Contents[ContentsName]): boolean {
  // A setting has no past that could be lost; what was seen last counts.
  if (!Array.isArray(held) || !Array.isArray(other)) return true;
  const ids = new Set((held as readonly { id: string }[]).map(({ id }) => id));
  return (other as readonly { id: string }[]).every(({ id }) => ids.has(id));
}

function setAside({ folder, clock }: MendingPlace, file: StoreFile): string {
  const now = clock.now();
  for (let again = 0; ; again++) {
    const aside = damagedPath(folder, file, now, again);
    if (existsSync(aside)) continue;
    renameSync(filePath(folder, file), aside);
    syncFolder(dirname(aside));
    return aside;
  }
}

function putInPlace<Name extends ContentsName>(
  { form }: MendingPlace,
  path: string,
  file: StoreFile<Name>,
  choice: Choice<Name>,
): void {
  if (choice.from !== 'memory') copyDurably(choice.from.path, path);
  else writeDurably(path, textOf(file, form.current, choice.contents));
}

function textOf(file: StoreFile, form: number, contents: Contents[ContentsName]): string {
  return file.holds === 'settings'
    ? settingsText(form, contents as Contents['settings'])
    : factsText(form, contents as Contents['bench']);
}

export const emptyContents = <Name extends ContentsName>(holds: Name): Contents[Name] =>
  (holds === 'settings' ? {} : []) as unknown as Contents[Name];
