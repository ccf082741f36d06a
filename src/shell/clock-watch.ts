import type { BenchFact } from '../tracker/bench/index.ts';
import type { Milliseconds } from '../tracker/time/index.ts';
import type { Clock } from './clock.ts';

/** A clock that differs from the machine's own time by more than this was set. */
const noticed: Milliseconds = 2000;

/**
 * Notices that the machine's clock was set, by its difference from the time since the machine started.
 *
 * @param told facts of before: since the last of them it may have been set too
 */
export function createClockWatch(
  clock: Clock,
  told: readonly BenchFact[] = [],
): { readonly look: () => Milliseconds | null } {
  const offset = (): number | null => {
    const up = clock.uptime();
    return up === null ? null : clock.now() - up;
  };
  let last = lastOffset(told, clock.bootId) ?? offset();
  return {
    look: () => {
      const now = offset();
      const step = now === null || last === null ? 0 : now - last;
      last = now;
      return Math.abs(step) > noticed ? Math.round(step) : null;
    },
  };
}

/** Of the last fact that this start of the machine told; null where there is none. */
function lastOffset(facts: readonly BenchFact[], bootId: string | null): number | null {
  let last: { readonly upMs: Milliseconds; readonly offset: number } | null = null;
  for (const { bootId: boot, uptimeMs, told } of facts) {
    if (boot === null || boot !== bootId || uptimeMs === null) continue;
    if (last === null || uptimeMs >= last.upMs) last = { upMs: uptimeMs, offset: told - uptimeMs };
  }
  return last?.offset ?? null;
}
