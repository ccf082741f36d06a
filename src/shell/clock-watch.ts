import type { Milliseconds } from '../tracker/time/index.ts';
import type { Clock } from './clock.ts';

/** A clock that differs from the machine's own time by more than this was set. */
const noticed: Milliseconds = 2000;

/** Notices that the machine's clock was set while the program runs, by its difference from the time since start. */
export function createClockWatch(clock: Clock): { readonly look: () => Milliseconds | null } {
  const offset = (): number | null => {
    const up = clock.uptime();
    return up === null ? null : clock.now() - up;
  };
  let last = offset();
  return {
    look: () => {
      const now = offset();
      const step = now === null || last === null ? 0 : now - last;
      last = now;
      return Math.abs(step) > noticed ? Math.round(step) : null;
    },
  };
}
