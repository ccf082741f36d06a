import type { NewBenchFact } from './facts.ts';

/** A refusal in plain words: what is not done and why, and what to do instead. */
export type Refusal = {
  /** Starts with `Not ...:`. */
  readonly says: string;
  /** What was meant perhaps, nearest first. */
  readonly nearest?: readonly string[];
  /** All hands are full: with one of these sessions in the intent's `putDown` it can be done. */
  readonly couldPutDown?: readonly string[];
};

/** What became of an intent: new facts and what they are called, or a refusal with nothing changed. */
export type Outcome =
  | {
      readonly ok: true;
      readonly facts: readonly NewBenchFact[];
      readonly says: string;
      readonly piece: string | null;
      /** What is wrong with what was done all the same; to be told so that it is not missed. */
      readonly warns?: string;
    }
  | { readonly ok: false; readonly refusal: Refusal };

/** What was done. `piece` is the one it was about, for the screen to select. */
export const accept = (
  facts: readonly NewBenchFact[],
  says: string,
  piece: string | null = null,
  warns: string | null = null,
): Outcome => ({
  ok: true,
  facts,
  says,
  piece,
  ...(warns === null ? {} : { warns }),
});

/** Several warnings as one; null where there is none. */
export const warningOf = (...warnings: readonly (string | null)[]): string | null =>
  warnings.filter((each) => each !== null).join('; ') || null;

/** Nothing is done. `says` begins `Not ...:` and says what to do instead; `nearest` is what was meant perhaps. */
export const refuse = (says: string, nearest?: readonly string[]): Outcome => ({
  ok: false,
  refusal: nearest ? { says, nearest } : { says },
});
