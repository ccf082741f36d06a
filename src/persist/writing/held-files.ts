import { copyDurably, makeFolder } from '../file/durable.ts';
import { identify, type Identity } from '../file/identity.ts';
import { writeProblem } from '../file/write-problem.ts';
import {
  filePath,
  olderFormPath,
  type Contents,
  type ContentsName,
  type StoreFile,
} from '../folder/names.ts';
import { inspect } from '../reading/inspect.ts';
import { loadFile } from '../reading/load-file.ts';
import type { MendingPlace } from '../reading/mend.ts';
import { good, type Notice, type Result } from '../result.ts';
import { checkContents } from '../schemas/check.ts';
import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { openConfFile, type StoredDocument } from './conf-file.ts';
import { replaceFile } from './replace-file.ts';

export type HeldFile<Name extends ContentsName> = {
  readonly contents: Contents[Name];
  readonly identity: Identity | null;
  readonly form: number;
};

/** What a file shall hold from now on. */
export type Rewriting = { readonly file: StoreFile; readonly contents: Contents[ContentsName] };

/** The files as last seen, read again only where they changed on the disk. */
export type HeldFiles = {
  /** What the file holds now; mends it if need be. The lock must be held. */
  readonly current: <Name extends ContentsName>(file: StoreFile<Name>) => Result<HeldFile<Name>>;
  /** The same without the lock; null if the file needs mending. */
  readonly seen: <Name extends ContentsName>(
    file: StoreFile<Name>,
  ) => Result<HeldFile<Name> | null>;
  /** All of them or none. The lock must be held, and each file be `current`. */
  readonly rewrite: (rewritings: readonly Rewriting[]) => Result<void>;
};

export function holdFiles(
  place: Omit<MendingPlace, 'mayWrite'>,
  tell: (notice: Notice) => void,
): HeldFiles {
  const { folder, form } = place;
  const held = new Map<string, HeldFile<ContentsName>>();
  const confFiles = new Map<string, (document: StoredDocument) => void>();

  const heldOf = <Name extends ContentsName>({ name }: StoreFile<Name>) =>
    held.get(name) as HeldFile<Name> | undefined;

  const unchanged = <Name extends ContentsName>(
    file: StoreFile<Name>,
  ): Result<HeldFile<Name> | null> => {
    const now = identify(filePath(folder, file));
    if (!now.ok) return now;
    const last = heldOf(file);
    return good(last !== undefined && last.identity === now.value ? last : null);
  };

  const writeWithConf = (file: StoreFile) => (document: StoredDocument) => {
    let write = confFiles.get(file.name);
    if (write === undefined) {
      write = openConfFile(folder, file);
      confFiles.set(file.name, write);
    }
    write(document);
  };

  return {
    current(file) {
      const same = unchanged(file);
      if (!same.ok) return same;
      if (same.value !== null) return good(same.value);
      const read = loadFile({ ...place, mayWrite: true }, file, heldOf(file)?.contents ?? null);
      if (!read.ok) return read;
      held.set(file.name, read.value);
      if (read.value.notice) tell(read.value.notice);
      return read;
    },

    seen(file) {
      const same = unchanged(file);
      if (!same.ok || same.value !== null) return same;
      const found = inspect(filePath(folder, file), file.holds, form, checkContents);
      if (!found.ok) return found;
      if (found.value.is !== 'fine') return good(null);
      held.set(file.name, found.value);
      return good(found.value);
    },

    rewrite(rewritings) {
      const undos: (() => void)[] = [];
      for (const { file, contents } of rewritings) {
        const kept = keepOlderForm(
          folder,
          file,
          held.get(file.name)?.form ?? form.current,
          form.current,
        );
        const replaced = kept.ok
          ? replaceFile(folder, file, documentOf(form.current, file, contents), writeWithConf(file))
          : kept;
        if (!replaced.ok) {
          for (const undo of undos.reverse()) undo();
          for (const { file: touched } of rewritings) held.delete(touched.name);
          return replaced;
        }
        undos.push(replaced.value.undo);
        held.set(file.name, { contents, identity: replaced.value.identity, form: form.current });
      }
      return good(undefined);
    },
  };
}

const documentOf = (
  form: number,
  { holds }: StoreFile,
  contents: Contents[ContentsName],
): StoredDocument =>
  holds === 'settings'
    ? { recoat: form, settings: contents as Contents['settings'] }
    : { recoat: form, facts: contents as Contents['bench'] };

/** Before a file is first written in a new form, keeps it as it was; and makes its folder. */
function keepOlderForm(folder: string, file: StoreFile, from: number, to: number): Result<void> {
  const path = filePath(folder, file);
  const copy = olderFormPath(folder, file, from);
  try {
    makeFolder(dirname(path));
    if (from < to && !existsSync(copy)) copyDurably(path, copy);
    return good(undefined);
  } catch (error) {
    return { ok: false, problem: writeProblem(copy, error) };
  }
}
