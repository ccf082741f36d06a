import type { BenchFact } from '../../tracker/bench/index.ts';
import { benchFile, historyFile } from '../folder/names.ts';
import { idsLeaving } from '../join-facts.ts';
import { good, type Result } from '../result.ts';
import type { Leaving } from '../store.ts';
import { appendedTo } from './appended.ts';
import type { HeldFiles } from './held-files.ts';

/**
 * Moves facts from the bench file to the files of their years. Each year is on the disk before anything leaves the bench
 * file: dying in between leaves facts in both, and the next move finds them there and only takes them out here.
 * The lock must be held.
 */
export function moveToHistory(files: HeldFiles, pieces: readonly Leaving[]): Result<void> {
  for (const [year, facts] of byYear(pieces)) {
    const file = historyFile(year);
    const before = files.current(file);
    if (!before.ok) return before;
    const grown = appendedTo(file, before.value.contents, facts);
    if (grown === null) continue;
    const written = files.rewrite([grown]);
    if (!written.ok) return written;
  }
  const bench = files.current(benchFile);
  if (!bench.ok) return bench;
  const gone = idsLeaving(pieces);
  const staying = bench.value.contents.filter(({ id }) => !gone.has(id));
  if (staying.length === bench.value.contents.length) return good(undefined);
  return files.rewrite([{ file: benchFile, contents: staying }]);
}

function byYear(pieces: readonly Leaving[]): ReadonlyMap<number, readonly BenchFact[]> {
  const years = new Map<number, BenchFact[]>();
  for (const { year, facts } of pieces) years.set(year, [...(years.get(year) ?? []), ...facts]);
  return years;
}
