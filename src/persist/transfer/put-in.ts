import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import type { BenchFact } from '../../tracker/bench/index.ts';
import { makeFolder, writeDurably } from '../file/durable.ts';
import { writeProblem } from '../file/write-problem.ts';
import { bad, good, type Notice, type Result } from '../result.ts';
import { readSettings } from '../settings/read-settings.ts';
import type { FactStore } from '../store.ts';
import type { Exported } from './exported.ts';
import { readOwn } from './gather.ts';
import { standBeside, type Here } from './stand-beside.ts';

export type PutIn = {
  /** False where all of it was there before. */
  readonly changed: boolean;
  /** Settings that were passed over. */
  readonly notices: readonly Notice[];
};

/**
 * Puts an exported store into an empty one. The bench comes last and in one go: an import that is cut off leaves no piece
 * on the bench, and the next one goes on with it.
 *
 * @param file what the export is called in problems
 */
export function putIn(
  store: FactStore,
  ownFolder: string,
  coming: Exported,
  file: string,
): Result<PutIn> {
  const here = whatIsHere(store, ownFolder);
  if (!here.ok) return here;
  const reading = readSettings(coming.settings, file);
  const fit = standBeside(here.value, coming, reading.settings);
  if (fit.fits === 'not') return refusedFor(file, fit.why);
  if (fit.fits === 'is there') {
    const rest = addRest(store, here.value, coming, []);
    return rest.ok ? good({ changed: rest.value, notices: [] }) : rest;
  }
  const own = writeOwn(ownFolder, coming.own);
  if (!own.ok) return own;
  const isChosen = isDeepStrictEqual(here.value.loaded.settings, reading.settings);
  const chosen = store.changeSettings(() => ({
    settings: Object.keys(coming.settings).length === 0 ? null : reading.settings,
    beside: reading.kept,
    result: null,
  }));
  if (!chosen.ok) return chosen;
  const shared = new Set(coming.bench.map(({ id }) => id));
  const moved = store.moveToHistory(
    [...coming.years].map(([year, facts]) => ({ year, facts, shared })),
  );
  if (!moved.ok) return moved;
  const rest = addRest(store, here.value, coming, coming.bench);
  if (!rest.ok) return rest;
  const hasChanged = rest.value || own.value || !isChosen || coming.years.size > 0;
  return good({ changed: hasChanged, notices: reading.notices });
}

function whatIsHere(store: FactStore, ownFolder: string): Result<Here> {
  const loaded = store.load();
  if (!loaded.ok) return loaded;
  const years = new Map<number, readonly BenchFact[]>();
  for (const year of store.historyYears()) {
    const history = store.readHistory(year);
    if (!history.ok) return history;
    years.set(year, history.value.facts);
  }
  const own = readOwn(ownFolder);
  return own.ok ? good({ loaded: loaded.value, years, own: own.value }) : own;
}

/** @returns whether anything was added. */
function addRest(
  store: FactStore,
  here: Here,
  { conditions, pings }: Exported,
  bench: readonly BenchFact[],
): Result<boolean> {
  const added = store.change((current) => {
    const isAsSeen = current.bench.length === here.loaded.bench.length;
    const known = new Set(
      [...current.bench, ...current.conditions, ...current.pings].map(({ id }) => id),
    );
    const isNew = [...bench, ...conditions, ...pings].some(({ id }) => !known.has(id));
    return isAsSeen
      ? { append: { bench, conditions, pings }, result: isNew }
      : { append: {}, result: null };
  });
  if (!added.ok) return added;
  return added.value === null
    ? bad(
        'busy',
        store.folder ?? '',
        'Not imported: another recoat wrote to the store meanwhile.',
        'Close it, and import again.',
      )
    : good(added.value);
}

/** @returns whether there was one to write. */
function writeOwn(folder: string, files: Exported['own']): Result<boolean> {
  let path = folder;
  let hasWritten = false;
  try {
    if (files.size > 0) makeFolder(folder);
    for (const [name, text] of files) {
      path = join(folder, name);
      if (existsSync(path)) continue;
      writeDurably(path, text);
      hasWritten = true;
    }
    return good(hasWritten);
  } catch (error) {
    return { ok: false, problem: writeProblem(path, error) };
  }
}

const refusedFor = (file: string, why: string) =>
  bad(
    'not empty',
    file,
    `Not imported: ${why}.`,
    'Nothing was changed. Import into an empty folder: recoat import FILE --folder NEW',
  );
