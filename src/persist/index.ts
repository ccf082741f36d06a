import type { OpenOptions } from './open-store.ts';
import type { Result } from './result.ts';
import type { FactStore } from './store.ts';

export { dataFolder } from './folder/data-folder.ts';
export { hasStore } from './folder/has-store.ts';
export { looksSynced } from './folder/synced-folder.ts';
export { memoryStore } from './memory-store.ts';
export { openStore, type OpenOptions } from './open-store.ts';
export type { Notice, Result, StoreProblem } from './result.ts';
export type { FactStore, Loaded, OpenedStore } from './store.ts';

/** Loads what writing needs (conf, schemas, the lock) and opens the store. Reading does without all of it. */
export async function openForWriting(
  folder: string,
  options: OpenOptions,
): Promise<Result<FactStore>> {
  const { openDiskStore } = await import('./writing/disk-store.ts');
  return openDiskStore(folder, options);
}
