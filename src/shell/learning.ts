import type { FactStore } from '../persist/index.ts';
import {
  historyPrints,
  readLearned,
  writeLearned,
  type LearnedFile,
  type YearPrint,
  type YearsTaught,
} from '../persist/learned/learned-file.ts';
import {
  foldBench,
  type Bench,
  type Estimator,
  type ImportedHours,
  type Intent,
  type Reading,
} from '../tracker/bench/index.ts';
import type { Settings } from '../tracker/settings/index.ts';
import { airSense, type AirSense } from '../tracker/windows/index.ts';
import {
  dryingBook,
  dryingTimesFrom,
  estimatorFrom,
  notTaught,
  notToTeach,
  teachBench,
  teachImports,
  withCoatsOf,
  type DryingBook,
  type LearnedMinutes,
  type Taught,
} from '../tracker/learning/index.ts';

/** What the history taught, and on top of it the bench. */
export type Learning = {
  /** The bench with somebody who foretells minutes and drying times for it. */
  readonly withLearned: (bench: Bench, around: Around) => Bench;
  /** Learns from the history where it isn't what the cache was made from. @returns whether it did */
  readonly refresh: (store: FactStore, bench: Bench, readings: readonly Reading[]) => boolean;
  /** The coats that were tried, on this bench and before. */
  readonly book: (bench: Bench, readings: readonly Reading[]) => DryingBook;
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

/** What drying times are learned in. */
export type Around = {
  readonly readings: readonly Reading[];
  readonly settings: Pick<Settings, 'air' | 'learnDrying'>;
};

const nothingYet: YearsTaught = { ...notTaught, dried: [] };
const nothing: LearnedFile = {
  years: [],
  except: [],
  earlier: nothingYet,
  whole: nothingYet,
  imports: [],
  onImports: notTaught,
};

/** @param folder null: nothing is kept on the disk, as in the invented shop */
export function createLearning(folder: string | null): Learning {
  let cache: LearnedFile | null = null;
  const history = (): LearnedFile =>
    (cache ??= (folder === null ? null : readLearned(folder)) ?? nothing);
  const airOf = airAsRead();
  /** The last one, so that products of which nothing new is known keep what was worked out from them. */
  let lastBook: DryingBook | undefined;
  const book: Learning['book'] = (bench, readings) =>
    (lastBook = dryingBook(withCoatsOf(history().whole.dried, bench, airOf(readings)), lastBook));
  return {
    book,
    withLearned: (bench, { readings, settings }) => {
      let tried: DryingBook | null = null;
      // Worked out when it is first asked for, as the minutes are: many commands never do.
      const drying = dryingTimesFrom(() => (tried ??= book(bench, readings)), settings.air);
      return {
        ...bench,
        estimator: {
          ...estimatorOn(history, bench),
          afterwards: (other) => estimatorOn(history, other),
        },
        ...(settings.learnDrying ? { drying } : {}),
      };
    },
    refresh: (store, bench, readings) => {
      const before = history();
      const years =
        folder === null
          ? store.historyYears().map((year) => ({ year, print: 'held' }))
          : historyPrints(folder);
      const except = notToTeach(bench, [
        ...Object.keys(before.whole.until),
        ...before.whole.dried.map(({ piece }) => piece),
        ...before.except,
      ]);
      const imports = bench.imports ?? [];
      const ids = imports.map(({ id }) => id);
      const isOfNow = isSame(years, before.years) && isSame(except, before.except);
      if (isOfNow && isSame(ids, before.imports)) return false;
      const lessons = { years, except, air: airOf(readings) };
      const learned = learnedFrom(store, lessons, before);
      const onImports =
        ids.length === 0
          ? learned.whole
          : teachYears(store, lessons, { ...teachImports(notTaught, imports), dried: [] });
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

/** The same readings give the same air, and with it what was worked out in it. */
function airAsRead(): (readings: readonly Reading[]) => AirSense {
  let last: { readonly readings: readonly Reading[]; readonly air: AirSense } | null = null;
  return (readings) => {
    if (last?.readings !== readings)
      last = { readings, air: airSense({ readings, nightLowC: null }) };
    return last.air;
  };
}

type Lessons = {
  readonly years: readonly YearPrint[];
  readonly except: readonly string[];
  readonly air: AirSense;
};

function learnedFrom(
  store: FactStore,
  lessons: Lessons,
  before: LearnedFile,
): Omit<LearnedFile, 'imports' | 'onImports'> {
  const { years, except } = lessons;
  const past = { ...lessons, years: years.slice(0, -1) };
  const earlier = earlierYears(past.years, except, before) ?? teachYears(store, past, nothingYet);
  const whole = teachYears(store, { ...lessons, years: years.slice(-1) }, earlier);
  return { years, except, earlier, whole };
}

/** All years but the last, where they are what they were: the last one grew, or a new one began. */
function earlierYears(
  past: readonly YearPrint[],
  except: readonly string[],
  before: LearnedFile,
): YearsTaught | null {
  if (!isSame(except, before.except)) return null;
  if (isSame(past, before.years)) return before.whole;
  return isSame(past, before.years.slice(0, -1)) ? before.earlier : null;
}

/** A year that can't be read teaches nothing; the screens that need it say so. */
function teachYears(
  store: FactStore,
  { years, except, air }: Lessons,
  from: YearsTaught,
): YearsTaught {
  return years.reduce((taught, { year }) => {
    const history = store.readHistory(year);
    if (!history.ok) return taught;
    const bench = foldBench(history.value.facts);
    return {
      ...teachBench(taught, bench, except),
      dried: withCoatsOf(taught.dried, bench, air, except),
    };
  }, from);
}
