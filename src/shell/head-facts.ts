import type { BenchFact, FactHead, NewBenchFact, Teller } from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import type { Clock } from './clock.ts';

/** The head of the first fact that one key press or command made. */
export const factHead = (
  group: string,
  now: Instant,
  clock: Clock,
  by: Teller = 'person',
): FactHead => ({
  id: `${group}.1`,
  group,
  at: now,
  told: now,
  by,
  uptimeMs: clock.uptime(),
  bootId: clock.bootId,
});

/** Gives new facts their heads: ids named after the key press, when they were told, and the machine's own time. */
export const headFacts = (
  facts: readonly NewBenchFact[],
  group: string,
  now: Instant,
  clock: Clock,
  by: Teller = 'person',
): readonly BenchFact[] => {
  const head = factHead(group, now, clock, by);
  return facts.map(({ at, ...fact }, index) => ({
    ...head,
    id: `${group}.${index + 1}`,
    at: at ?? now,
    ...fact,
  }));
};
