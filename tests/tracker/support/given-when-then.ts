import { expect } from 'vitest';
import {
  decide,
  foldBench,
  type Intent,
  type IntentContext,
  type NewBenchFact,
  type Outcome,
} from '../../../src/tracker/bench/index.ts';
import type { Instant } from '../../../src/tracker/time/index.ts';
import { today } from './instants.ts';
import type { Past } from './past.ts';
import { labelSense } from './sense.ts';

export type Circumstances = Partial<Omit<IntentContext, 'now'>>;

export const contextAt = (now: Instant, more: Circumstances = {}): IntentContext => ({
  now,
  group: 'this-press',
  hands: 1,
  air: null,
  sense: labelSense,
  today,
  ...more,
});

type FactOfKind<Kind extends NewBenchFact['kind']> = Extract<NewBenchFact, { kind: Kind }>;

/** A fact that is expected: its kind, and what of its body matters. `at` is compared only where it is named. */
export type ExpectedFact = {
  [Kind in NewBenchFact['kind']]: {
    readonly kind: Kind;
    readonly body: Partial<FactOfKind<Kind>['body']>;
    readonly at?: Instant;
  };
}[NewBenchFact['kind']];

/** Given these facts, when this is asked at that instant, then ... */
export const given = (before: Past) => ({
  when: (intent: Intent, now: Instant, circumstances: Circumstances = {}) => {
    const bench = foldBench(before.facts);
    return judge(decide(bench, intent, contextAt(now, circumstances)));
  },
});

const judge = (outcome: Outcome) => ({
  outcome,
  /** ... exactly these facts are made, in this order. */
  then(...facts: readonly ExpectedFact[]): void {
    expect(outcome).toMatchObject({ ok: true, facts });
  },
  /** ... it is accepted and called so. */
  thenSays(words: string): void {
    expect(outcome).toMatchObject({ ok: true, says: words });
  },
  /** ... it is refused in these words, and those names are offered. */
  thenRefused(words: string | RegExp, nearest?: readonly string[]): void {
    if (outcome.ok) expect.fail(`accepted: ${outcome.says}`);
    const { refusal } = outcome;
    expect(refusal.says).toMatch(/^Not [a-z ]+: \S/);
    if (typeof words === 'string') expect(refusal.says).toBe(words);
    else expect(refusal.says).toMatch(words);
    if (nearest !== undefined) expect(refusal.nearest ?? []).toEqual(nearest);
  },
});
