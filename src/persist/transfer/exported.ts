import type { BenchFact, ConditionsFact, PingFact } from '../../tracker/bench/index.ts';

/** A whole store, as one file carries it from one place to another. */
export type Exported = {
  readonly bench: readonly BenchFact[];
  readonly conditions: readonly ConditionsFact[];
  readonly pings: readonly PingFact[];
  /** As they stand in the file, with entries that this program doesn't know. */
  readonly settings: Readonly<Record<string, unknown>>;
  readonly years: ReadonlyMap<number, readonly BenchFact[]>;
  /** The user's own files of schedules and products: text by name. */
  readonly own: ReadonlyMap<string, string>;
};

/** Fields of the file's `export`, beside `bench`, `conditions`, `pings` and `settings`. */
export const ownField = 'schedules';
export const yearField = /^history\/(\d{4})$/;

/** What a file of the user's own may be called: a plain name that leads nowhere else, of the kind that is read there. */
export const ownName = /^[^./\\:\p{Cc}][^/\\:\p{Cc}]*\.ya?ml$/u;
