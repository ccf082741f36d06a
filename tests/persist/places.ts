import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openForWriting, openStore } from '../../src/persist/index.ts';
import type { FileForm } from '../../src/persist/file/form.ts';
import type { FactStore, OpenedStore, Result, StoreProblem } from '../../src/persist/index.ts';
import type { BenchFact } from '../../src/tracker/bench/index.ts';
import { noon } from './facts.ts';

/** A folder of its own for the test at hand, gone when it ends. */
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-persist-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export const fixedClock = { now: () => noon, today: () => '2026-11-24' };

export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.problem.kind}: ${result.problem.says}`);
  return result.value;
}

export function problemOf(result: Result<unknown>): StoreProblem {
  if (result.ok) throw new Error('it went well');
  return result.problem;
}

export async function openWriter(
  folder: string,
  options: { form?: FileForm; today?: () => string } = {},
): Promise<FactStore> {
  const { today = fixedClock.today, ...rest } = options;
  const store = valueOf(await openForWriting(folder, { clock: { ...fixedClock, today }, ...rest }));
  onTestFinished(() => store.close());
  return store;
}

export const openReader = async (folder: string): Promise<OpenedStore> =>
  valueOf(await openStore(folder, { clock: fixedClock }));

export const appendBench = (store: FactStore, ...bench: BenchFact[]): Result<string> =>
  store.change(() => ({ append: { bench }, result: 'stored' }));

export const idsOf = (facts: readonly { readonly id: string }[]): readonly string[] =>
  facts.map(({ id }) => id);

export const textOf = (folder: string, name: string): string =>
  readFileSync(join(folder, name), 'utf8');

export const put = (folder: string, name: string, text: string | Buffer): void =>
  writeFileSync(join(folder, name), text);

/** Every file below the folder with its bytes, except the lock, which is no record of anything. */
export function contentsOf(folder: string): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== 'lock.sqlite')
    .map((entry) => join(entry.parentPath, entry.name));
  return new Map(files.sort().map((file) => [file, readFileSync(file, 'latin1')]));
}
