import type { LearnedFile } from '../../persist/learned/learned-file.ts';
import type { BenchFact, ClockReading } from '../../tracker/bench/index.ts';
import type { BackTest } from '../../tracker/learning/index.ts';
import type { Review } from '../../tracker/review/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import type { ToLearn } from './learn-history.ts';

/** The bench as it stands, for a thread that can't ask for it. */
export type BenchNow = {
  readonly facts: readonly BenchFact[];
  readonly clock: ClockReading;
  readonly now: Instant;
};

/** Where past years lie: in a folder, or for a store that has none the facts themselves. */
export type PastYears =
  { readonly folder: string } | { readonly folder: null; readonly facts: readonly BenchFact[] };

/** What a worker is started for. */
export type WorkerStart =
  | {
      readonly do: 'look back';
      readonly years: PastYears;
      readonly bench: BenchNow;
      /** Of the shop, for months. */
      readonly zone: string;
    }
  | (Omit<ToLearn, 'years'> & { readonly do: 'learn'; readonly folder: string });

/** What one that looks back is asked for meanwhile. */
export type LookBackWish =
  | { readonly do: 'take bench'; readonly bench: BenchNow }
  | { readonly do: 'back-test' }
  | { readonly do: 'find'; readonly piece: string };

/** What it tells. */
export type LookBackTold =
  | { readonly is: 'read'; readonly done: number; readonly of: number }
  | {
      readonly is: 'review';
      readonly review: Review;
      /** Years that can't be read, a line each. */
      readonly problems: readonly string[];
    }
  | { readonly is: 'tried'; readonly result: BackTest; readonly isWhole: boolean }
  | { readonly is: 'found'; readonly piece: string; readonly facts: readonly BenchFact[] };

export type WorkerTold = LookBackTold | { readonly is: 'learned'; readonly learned: LearnedFile };
