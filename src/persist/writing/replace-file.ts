import { readFileSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { duplicate, syncFolder } from '../file/durable.ts';
import { identify, type Identity } from '../file/identity.ts';
import { writeProblem } from '../file/write-problem.ts';
import { filePath, previousPath, type StoreFile } from '../folder/names.ts';
import { bad, good, type Result } from '../result.ts';
import { documentText, type StoredDocument } from './conf-file.ts';

export type Replaced = {
  readonly identity: Identity | null;
  /** Puts the generation before back, for when a later part of the same change fails. */
  readonly undo: () => void;
};

/**
 * Replaces a file and returns when the new generation is on the disk and was read back equal. The generation before
 * is kept beside it from before the first byte is written; whatever goes wrong, it is in place again.
 *
 * @param write how the document gets into the file
 */
export function replaceFile(
  folder: string,
  file: StoreFile,
  document: StoredDocument,
  write: (document: StoredDocument) => void,
): Result<Replaced> {
  const path = filePath(folder, file);
  const before = identify(path);
  if (!before.ok) return before;
  const undo = () => {
    putBack(path, previousPath(folder, file), before.value);
  };
  try {
    if (before.value !== null) duplicate(path, previousPath(folder, file));
    write(document);
    if (!holds(path, documentText(document))) {
      undo();
      return shortWrite(path);
    }
    syncFolder(dirname(path));
    const after = identify(path);
    if (after.ok) return good({ identity: after.value, undo });
    undo();
    return after;
  } catch (error) {
    undo();
    return { ok: false, problem: writeProblem(path, error) };
  }
}

/** The disk may take part of a file, and conf doesn't look how much. */
function holds(path: string, text: string): boolean {
  const written = readFileSync(path);
  return written.length === Buffer.byteLength(text) && written.equals(Buffer.from(text));
}

function putBack(path: string, previous: string, before: Identity | null): void {
  try {
    const now = identify(path);
    if (now.ok && now.value === before) return;
    if (before === null) rmSync(path, { force: true });
    else duplicate(previous, path);
    syncFolder(dirname(path));
  } catch {
    // The disk refuses even a name. The next reading finds the damage and mends it from the same generation.
  }
}

const shortWrite = (path: string) =>
  bad(
    'full',
    path,
    `Not stored: there is no room left for ${path}; the disk took only part of it.`,
    'Make room on that disk, then do this again. What was stored before is untouched.',
  );
