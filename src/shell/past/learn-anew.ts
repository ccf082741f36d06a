import type { FactStore } from '../../persist/index.ts';
import type { Bench } from '../../tracker/bench/index.ts';
import type { Reading } from '../../tracker/trade/index.ts';
import type { Learning } from '../learning.ts';
import type { LearnBeside } from './learn-beside.ts';

export type LearnAnewOptions = {
  readonly learning: Learning;
  readonly folder: string | null;
  /** Learns in a thread of its own; absent, or without a folder, it is done at once and on the spot. */
  readonly beside: LearnBeside | undefined;
  readonly store: () => FactStore | null;
  readonly now: () => { readonly bench: Bench; readonly readings: readonly Reading[] };
  /** Other minutes are expected now. */
  readonly learned: () => void;
  readonly say: (notice: string) => void;
};

/**
 * Learns from past years where they are others than the cache was made from. Until that is done estimates go on by what was
 * learned before. Asked again meanwhile, it looks again afterwards.
 */
export function createLearnAnew({
  learning,
  folder,
  beside,
  store,
  now,
  learned,
  say,
}: LearnAnewOptions): () => void {
  let isLearning = false;
  let isAskedAgain = false;
  const learn = (): void => {
    const open = store();
    if (open === null) return;
    if (isLearning) {
      isAskedAgain = true;
      return;
    }
    const { bench, readings } = now();
    if (beside === undefined || folder === null) {
      if (learning.refresh(open, bench, readings)) learned();
      return;
    }
    const wanted = learning.toLearn(open, bench, readings);
    if (wanted === null) return;
    isLearning = true;
    void beside(folder, wanted)
      .then(
        (result) => {
          learning.take(result);
          learned();
        },
        (error: unknown) => say(notLearned(error)),
      )
      .finally(() => {
        isLearning = false;
        const isDue = isAskedAgain;
        isAskedAgain = false;
        if (isDue) learn();
      });
  };
  return learn;
}

const notLearned = (error: unknown): string =>
  `Not learned from past years: ${error instanceof Error ? error.message : String(error)}. Estimates stay as they were; the next start tries again.`;
