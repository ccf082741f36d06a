import { identify, type Identity } from '../file/identity.ts';
import { filePath, type Contents, type ContentsName, type StoreFile } from '../folder/names.ts';
import { good, type Notice, type Result } from '../result.ts';
import { checkContents } from '../schemas/check.ts';
import { inspect } from './inspect.ts';
import { mend, type MendingPlace } from './mend.ts';

export type LoadedFile<Name extends ContentsName> = {
  readonly contents: Contents[Name];
  /** Null if there is no file. */
  readonly identity: Identity | null;
  /** The form that the file has on the disk. */
  readonly form: number;
  readonly notice: Notice | null;
};

/**
 * Reads one file with everything checked, and mends it where it must be.
 *
 * @param held what this process last saw in the file, if it did
 */
export function loadFile<Name extends ContentsName>(
  place: MendingPlace,
  file: StoreFile<Name>,
  held: Contents[Name] | null = null,
): Result<LoadedFile<Name>> {
  const path = filePath(place.folder, file);
  const found = inspect(path, file.holds, place.form, checkContents);
  if (!found.ok) return found;
  if (found.value.is === 'fine') {
    const { contents, identity, form } = found.value;
    return good({ contents, identity, form, notice: null });
  }
  const damage = found.value.is === 'damaged' ? found.value.damage : null;
  const mended = mend(place, file, damage, held);
  if (!mended.ok) return mended;
  const identity = identify(path);
  return good({ ...mended.value, identity: identity.ok ? identity.value : null });
}
