import type { FactStore } from '../persist/index.ts';
import {
  historyPrints,
  readLearned,
  writeLearned,
  type LearnedFile,
  type YearPrint,
} from '../persist/learned/learned-file.ts';
import {
  foldBench,
  type Bench,
  type Estimator,
  type ImportedHours,
  type Intent,
} from '../tracker/bench/index.ts';
import {
  estimatorFrom,
  notTaught,
  notToTeach,
  teachBench,
  teachImports,
  type LearnedMinutes,
  type Taught,
} from '../tracker/learning/index.ts';

/** What the history taught, and on top of it the bench. */
export type Learning = {
  /** The bench with somebody who foretells minutes for it. */
  readonly withEstimator: (bench: Bench) => Bench;
  /** Learns from the history where it isn't what the cache was made from. @returns whether it did */
  readonly refresh: (store: FactStore, bench: Bench) => boolean;
};

/** What may leave a piece of the history out of what it taught, or take it in again. */
const changing: ReadonlySet<Intent['do']> = new Set([
  'leave out of learning',
  'remove piece',
  'put back on bench',
  'take back',
  'bring back',
]);

/** Whether the history may have to be learned anew after these. */
export const mayChangeLessons = (intents: readonly Intent[]): boolean =>
  intents.some((intent) => changing.has(intent.do));

const nothing: LearnedFile = {
  years: [],
  except: [],
  earlier: notTaught,
  whole: notTaught,
  imports: [],
  onImports: notTaught,
};

/** @param folder null: nothing is kept on the disk, as in the invented shop */
export function createLearning(folder: string | null): Learning {
  let cache: LearnedFile | null = null;
  const history = (): LearnedFile =>
    (cache ??= (folder === null ? null : readLearned(folder)) ?? nothing);
  return {
    withEstimator: (bench) => ({
      ...bench,
      estimator: {
        ...estimatorOn(history, bench),
        afterwards: (other) => estimatorOn(history, other),
      },
    }),
    refresh: (store, bench) => {
      const before = history();
      const years =
        folder === null
          ? store.historyYears().map((year) => ({ year, print: 'held' }))
          : historyPrints(folder);
      const except = notToTeach(bench, [...Object.keys(before.whole.until), ...before.except]);
      const imports = bench.imports ?? [];
      const ids = imports.map(({ id }) => id);
      const isOfNow = isSame(years, before.years) && isSame(except, before.except);
      if (isOfNow && isSame(ids, before.imports)) return false;
      const learned = learnedFrom(store, years, except, before);
      const onImports =
        ids.length === 0
          ? learned.whole
          : teachYears(store, years, except, teachImports(notTaught, imports));
      cache = { ...learned, imports: ids, onImports };
      if (folder !== null) writeLearned(folder, cache);
      return true;
    },
  };
}

function estimatorOn(history: () => LearnedFile, bench: Bench): Estimator {
  let minutes: LearnedMinutes | null = null;
  // Worked out when it is first asked for: most commands never do.
  return estimatorFrom(
    () => (minutes ??= teachBench(taughtBefore(history(), bench.imports ?? []), bench).minutes),
  );
}

/**
 * What was taught before the bench. Hours from elsewhere are older than the history; ones that the cache doesn't know yet
 * are taught after it until it is made again.
 */
function taughtBefore(
  { imports, onImports, whole }: LearnedFile,
  now: readonly ImportedHours[],
): Taught {
  const ids = now.map(({ id }) => id);
  return isSame(ids, imports) ? onImports : teachImports(whole, now);
}

const isSame = (one: unknown, other: unknown): boolean =>
  JSON.stringify(one) === JSON.stringify(other);

function learnedFrom(
  store: FactStore,
  years: readonly YearPrint[],
  except: readonly string[],
  before: LearnedFile,
): Omit<LearnedFile, 'imports' | 'onImports'> {
  const past = years.slice(0, -1);
  const earlier = earlierYears(past, except, before) ?? teachYears(store, past, except, notTaught);
  return { years, except, earlier, whole: teachYears(store, years.slice(-1), except, earlier) };
}

/** All years but the last, where they are what they were: the last one grew, or a new one began. */
function earlierYears(
  past: readonly YearPrint[],
  except: readonly string[],
  before: LearnedFile,
): Taught | null {
  if (!isSame(except, before.except)) return null;
  if (isSame(past, before.years)) return before.whole;
  return isSame(past, before.years.slice(0, -1)) ? before.earlier : null;
}

/** A year that can't be read teaches nothing; the screens that need it say so. */
function teachYears(
  store: FactStore,
  years: readonly YearPrint[],
  except: readonly string[],
  from: Taught,
): Taught {
  return years.reduce((taught, { year }) => {
    const history = store.readHistory(year);
    return history.ok ? teachBench(taught, foldBench(history.value.facts), except) : taught;
  }, from);
}
