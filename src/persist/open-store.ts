import { presentForm, type FileForm } from './file/form.ts';
import { historyFile } from './folder/names.ts';
import { assemble } from './reading/assemble.ts';
import { historyYears } from './reading/history-years.ts';
import { readLiveQuickly, readQuickly } from './reading/quick.ts';
import { good, type Notice, type Result } from './result.ts';
import type { OpenedStore, StoreClock } from './store.ts';

export type OpenOptions = {
  readonly clock: StoreClock;
  /** Another than the present form, for tests of migrations. */
  readonly form?: FileForm;
};

/** Reads the store in `folder` (absolute). A folder that isn't there is an empty store, and stays so. */
export async function openStore(
  folder: string,
  { clock, form = presentForm }: OpenOptions,
): Promise<Result<OpenedStore>> {
  const place = { folder, form, clock };
  let notices: readonly Notice[] = [];
  const quick = readLiveQuickly(folder, form);
  if (!quick.ok) return quick;
  let parts = quick.value;
  if (parts === null) {
    const { readLiveCarefully } = await import('./reading/careful.ts');
    const careful = readLiveCarefully(place);
    if (!careful.ok) return careful;
    ({ parts, notices } = careful.value);
  }
  const { loaded, settings } = assemble(folder, parts);
  return good({
    ...loaded,
    folder,
    notices: [...notices, ...settings.notices],
    historyYears: () => historyYears(folder),
    readHistory: async (year) => {
      const quick = readQuickly(folder, historyFile(year), form);
      if (!quick.ok) return quick;
      if (quick.value !== null) return good({ facts: quick.value.contents, notices: [] });
      const { readHistory } = await import('./reading/careful.ts');
      return readHistory(place, year);
    },
  });
}
