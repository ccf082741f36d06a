import type { Bench, BenchFact, Intent } from '../tracker/bench/index.ts';
import type { Applied, Telling } from './apply-intent.ts';

/** A key press that is not on the disk yet. */
export type Unwritten = Telling & {
  readonly intent: Intent;
  /** Facts that must be on the bench again for it. */
  readonly recalled: readonly BenchFact[];
  readonly facts: readonly BenchFact[];
  readonly piece: string | null;
};

export const factsOf = ({ recalled, facts }: Unwritten): readonly BenchFact[] => [
  ...recalled,
  ...facts,
];

type Door = {
  readonly fold: (facts: readonly BenchFact[]) => Bench;
  readonly apply: (on: Bench, intent: Intent, telling: Telling) => Applied;
};

/**
 * Decides what was pressed once more, in its order, on what another process has written meanwhile.
 * @returns the facts to append, and what is refused now
 */
export function decideAnew(
  waiting: readonly Unwritten[],
  written: readonly BenchFact[],
  { fold, apply }: Door,
): { readonly facts: readonly BenchFact[]; readonly refusals: readonly string[] } {
  const facts: BenchFact[] = [];
  const refusals: string[] = [];
  for (const { intent, recalled, ...telling } of waiting) {
    const applied = apply(fold([...written, ...facts, ...recalled]), intent, telling);
    if (applied.ok) facts.push(...recalled, ...applied.facts);
    else refusals.push(applied.says);
  }
  return { facts, refusals };
}
