import type { FactStore } from '../persist/index.ts';
import {
  historyPrints,
  readLearned,
  writeLearned,
  type LearnedFile,
} from '../persist/learned/learned-file.ts';
import {
  type Bench,
  type Estimator,
  type ImportedHours,
  type Intent,
} from '../tracker/bench/index.ts';
import type { Reading } from '../tracker/trade/index.ts';
import type { Settings } from '../tracker/settings/index.ts';
import { airSense, type AirSense } from '../tracker/windows/index.ts';
import {
  dryingBook,
  dryingTimesFrom,
  estimatorFrom,
  notToTeach,
  teachBench,
  teachImports,
  withCoatsOf,
  type DryingBook,
  type LearnedMinutes,
  type Taught,
} from '../tracker/learning/index.ts';
import { isSame, learnHistory, nothingLearnedYet, type ToLearn } from './past/learn-history.ts';

/** What the history taught, and on top of it the bench. */
export type Learning = {
  /** The bench with somebody who foretells minutes and drying times for it. */
  readonly withLearned: (bench: Bench, around: Around) => Bench;
  /** Learns from the history where it isn't what the cache was made from. @returns whether it did */
  readonly refresh: (store: FactStore, bench: Bench, readings: readonly Reading[]) => boolean;
  /** What there is to learn anew, for whoever does it beside; null where the cache was made from what there is. */
  readonly toLearn: (
    store: FactStore,
    bench: Bench,
    readings: readonly Reading[],
  ) => ToLearn | null;
  /** Takes over what was learned beside. */
  readonly take: (learned: LearnedFile) => void;
  /** The coats that were tried, on this bench and before. */
  readonly book: (bench: Bench, readings: readonly Reading[]) => DryingBook;
};

/** What may leave a piece of the history out of what it taught, or take it in again. */
const changing: ReadonlySet<Intent['do']> = new Set([
  'leave out of learning',
  'import hours',
  'take out import',
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

/** @param folder null: nothing is kept on the disk, as in the invented shop */
export function createLearning(folder: string | null): Learning {
  let cache: LearnedFile | null = null;
  const history = (): LearnedFile =>
    (cache ??= (folder === null ? null : readLearned(folder)) ?? nothingLearnedYet);
  const airOf = airAsRead();
  /** The last one, so that products of which nothing new is known keep what was worked out from them. */
  let lastBook: DryingBook | undefined;
  const book: Learning['book'] = (bench, readings) =>
    (lastBook = dryingBook(withCoatsOf(history().whole.dried, bench, airOf(readings)), lastBook));
  const toLearn: Learning['toLearn'] = (store, bench, readings) => {
    const before = history();
    const years =
      folder === null
        ? store.historyYears().map((year) => ({ year, print: 'held' }))
        : historyPrints(folder);
    // Without a cache nobody knows yet which of them the history has.
    const isFirst = years.length > 0 && before.years.length === 0;
    const known = [
      ...Object.keys(before.whole.until),
      ...before.whole.dried.map(({ piece }) => piece),
      ...before.except,
    ];
    const except = notToTeach(bench, isFirst ? [...bench.pieces.keys()] : known);
    const imports = bench.imports ?? [];
    const ids = imports.map(({ id }) => id);
    const isOfNow =
      isSame(years, before.years) && isSame(except, before.except) && isSame(ids, before.imports);
    return isOfNow ? null : { years, except, imports, readings };
  };
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
      const wanted = toLearn(store, bench, readings);
      if (wanted === null) return false;
      cache = learnHistory(store, wanted, history());
      if (folder !== null) writeLearned(folder, cache);
      return true;
    },
    toLearn,
    take: (learned) => {
      cache = learned;
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

/** The same readings give the same air, and with it what was worked out in it. */
function airAsRead(): (readings: readonly Reading[]) => AirSense {
  let last: { readonly readings: readonly Reading[]; readonly air: AirSense } | null = null;
  return (readings) => {
    if (last?.readings !== readings)
      last = { readings, air: airSense({ readings, nightLowC: null }) };
    return last.air;
  };
}
