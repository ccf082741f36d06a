import type { Bench, BenchFact, ClockReading, Intent } from '../tracker/bench/index.ts';
import type { Applied, Telling } from './apply-intent.ts';
import { asShownNow } from './clock.ts';

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
  readonly present: ClockReading;
};

/**
 * Decides what was pressed once more, in its order, on what another process has written meanwhile; each at the moment of
 * its key, as the clock shows that now.
 * @returns the facts to append, and what is refused now
 */
export function decideAnew(
  waiting: readonly Unwritten[],
  written: readonly BenchFact[],
  { fold, apply, present }: Door,
): { readonly facts: readonly BenchFact[]; readonly refusals: readonly string[] } {
  const facts: BenchFact[] = [];
  const refusals: string[] = [];
  for (const { intent, recalled, ...telling } of waiting) {
    const on = fold([...written, ...facts, ...recalled]);
    const applied = apply(on, intent, tellingNow(telling, present));
    if (applied.ok) facts.push(...recalled, ...applied.facts);
    else refusals.push(applied.says);
  }
  return { facts, refusals };
}

/** Told again after the clock was set: every instant moves along. */
export function tellingNow({ clock, at, group }: Telling, present: ClockReading): Telling {
  const shown = asShownNow(clock, present);
  return { clock: shown, at: at === undefined ? at : at + shown.told - clock.told, group };
}
