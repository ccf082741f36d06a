import type { BenchFact, ConditionsFact, PingFact } from '../tracker/bench/index.ts';
import type { Settings } from '../tracker/settings/index.ts';
import type { CalendarDay, Instant } from '../tracker/time/index.ts';
import type { Notice, Result } from './result.ts';

/** Everything that the program starts from. History is read only when asked for. */
export type Loaded = {
  readonly bench: readonly BenchFact[];
  readonly conditions: readonly ConditionsFact[];
  readonly pings: readonly PingFact[];
  readonly settings: Settings;
  /** Changes whenever one of the files does. */
  readonly fingerprint: string;
};

/** All facts of the pieces that left the bench in one year. */
export type History = { readonly facts: readonly BenchFact[]; readonly notices: readonly Notice[] };

/** A store opened for reading only. It never waits for a writer. */
export type OpenedStore = Loaded & {
  readonly folder: string;
  readonly notices: readonly Notice[];
  readonly historyYears: () => readonly number[];
  readonly readHistory: (year: number) => Promise<Result<History>>;
};

export type Appending = {
  readonly bench?: readonly BenchFact[];
  readonly conditions?: readonly ConditionsFact[];
  readonly pings?: readonly PingFact[];
  /** Ids of readings that others stand for now, and of pings of long ago: left out. Nothing else is ever taken away. */
  readonly needless?: ReadonlySet<string>;
};

/** A piece on its way out of the bench file. */
export type Leaving = {
  readonly year: number;
  /** All facts of the piece. */
  readonly facts: readonly BenchFact[];
  /** Ids of those that pieces still on the bench need too: copied to history, kept on the bench. */
  readonly shared?: ReadonlySet<string>;
};

/** The one door through which facts are stored. Every call returns only when what it says is on the disk. */
export type FactStore = {
  /** Null for a store in memory. */
  readonly folder: string | null;
  readonly load: () => Result<Loaded>;
  /**
   * Decides on what is stored at that moment, with every other process kept out, and appends. Facts whose id is
   * already there are dropped. If anything can't be stored, nothing is, and the result is not given out.
   */
  readonly change: <T>(
    decide: (current: Loaded) => { readonly append: Appending; readonly result: T },
  ) => Result<T>;
  readonly readSettings: () => Result<Settings>;
  /** `settings` null changes nothing. `beside`: entries that this program doesn't know, kept as they are. */
  readonly changeSettings: <T>(
    decide: (current: Settings) => {
      readonly settings: Settings | null;
      readonly beside?: Readonly<Record<string, unknown>>;
      readonly result: T;
    },
  ) => Result<T>;
  /**
   * Copies facts to the history of their years, and once they are there takes them out of the bench file. Pieces chosen
   * by a function are chosen on what is stored at that moment, with every other process kept out.
   */
  readonly moveToHistory: (
    pieces: readonly Leaving[] | ((current: Loaded) => readonly Leaving[]),
  ) => Result<void>;
  readonly historyYears: () => readonly number[];
  readonly readHistory: (year: number) => Result<History>;
  /** Of the files as they are now; compare with `Loaded.fingerprint`. */
  readonly fingerprint: () => string;
  /** Calls back, soon, after somebody else changed a file. Keeps no process alive. Returns how to stop. */
  readonly watch: (listener: () => void) => () => void;
  /** What was found wrong and mended since opening. */
  readonly notices: () => readonly Notice[];
  readonly close: () => void;
};

/** The time, as the shell tells it: for the names of files set aside and of backups. */
export type StoreClock = { readonly now: () => Instant; readonly today: () => CalendarDay };
