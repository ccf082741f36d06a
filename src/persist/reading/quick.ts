import type { FileForm } from '../file/form.ts';
import { filePath, type ContentsName, type StoreFile } from '../folder/names.ts';
import { good, type Result } from '../result.ts';
import { readParts, type Parts } from './assemble.ts';
import { inspect } from './inspect.ts';
import { leftovers } from './leftovers.ts';
import type { LoadedFile } from './load-file.ts';

/**
 * Reads a file that needs neither checking nor mending; null if it does. Nearly every read ends here, so nothing that
 * loads schemas or the lock may be imported.
 */
export function readQuickly<Name extends ContentsName>(
  folder: string,
  file: StoreFile<Name>,
  form: FileForm,
): Result<LoadedFile<Name> | null> {
  const found = inspect(filePath(folder, file), file.holds, form, null);
  if (!found.ok) return found;
  if (found.value.is === 'fine') return good({ ...found.value, notice: null });
  if (found.value.is !== 'absent' || leftovers(folder, file).length > 0) return good(null);
  return good({
    contents: (file.holds === 'settings' ? {} : []) as unknown as LoadedFile<Name>['contents'],
    identity: null,
    form: form.current,
    notice: null,
  });
}

export const readLiveQuickly = (folder: string, form: FileForm): Result<Parts | null> =>
  readParts<null>((file) => readQuickly(folder, file, form));
