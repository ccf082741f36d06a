import type { BenchFact, NewBenchFact, Teller } from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import type { Clock } from './clock.ts';

/** Gives new facts their heads: ids named after the key press, when they were told, and the machine's own time. */
export const headFacts = (
  facts: readonly NewBenchFact[],
  group: string,
  now: Instant,
  clock: Clock,
  by: Teller = 'person',
): readonly BenchFact[] =>
  facts.map(
    ({ at, ...fact }, index) =>
      ({
        id: `${group}.${index + 1}`,
        group,
        at: at ?? now,
        told: now,
        by,
        uptimeMs: clock.uptime(),
        bootId: clock.bootId,
        ...fact,
      }) as BenchFact,
  );
