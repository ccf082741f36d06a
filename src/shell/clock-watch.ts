import { clockStep, type BenchFact, type ClockReading } from '../tracker/bench/index.ts';
import type { Milliseconds } from '../tracker/time/index.ts';
import { clockReading, type Clock } from './clock.ts';

/**
 * Notices that the machine's clock was set, by its difference from the time since the machine started.
 *
 * @param told facts of before: since the last of them it may have been set too
 */
export function createClockWatch(
  clock: Clock,
  told: readonly BenchFact[] = [],
): { readonly look: () => Milliseconds | null } {
  let last = lastTold(told, clock.bootId) ?? clockReading(clock);
  return {
    look: () => {
      const now = clockReading(clock);
      const step = clockStep(last, now);
      last = now;
      return step;
    },
  };
}

/** By the last fact that this start of the machine told; null where there is none. */
function lastTold(facts: readonly BenchFact[], bootId: string | null): ClockReading | null {
  let last: BenchFact | null = null;
  for (const fact of facts) {
    if (fact.bootId === null || fact.bootId !== bootId || fact.uptimeMs === null) continue;
    if (last === null || fact.uptimeMs >= (last.uptimeMs ?? 0)) last = fact;
  }
  return last;
}
