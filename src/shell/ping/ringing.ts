import type { Instant, Milliseconds } from '../../tracker/time/index.ts';
import type { ShownPing } from '../../views/port.ts';
import type { Pinger } from './pinger.ts';

/** A loud ping rings again after this long, until a key or a command takes note of it. */
export const ringAgainAfter: Milliseconds = 20_000;
/** The same where nothing rings, and each time a notification comes up. */
export const notifyAgainAfter: Milliseconds = 60_000;

export type Ringing = {
  /** A loud ping has just gone out from here. */
  readonly rang: (claim: string, now: Instant) => void;
  /**
   * Rings again for what nobody has silenced, also for what a process sent that may be gone by now; answers when the
   * next one is to ring.
   */
  readonly ring: (pings: readonly ShownPing[], now: Instant) => Instant | null;
};

export function createRinging(pinger: Pinger, every: Milliseconds): Ringing {
  const last = new Map<string, Instant>();
  return {
    rang: (claim, now) => void last.set(claim, now),
    ring: (pings, now) => {
      const standing = pings.filter(({ seenAt, loud }) => seenAt === null && loud);
      const times = standing.map(({ claim, text, at }) => {
        const rangAt = last.get(claim) ?? at;
        // After the clock was set back nothing is known of how long ago it rang.
        if (now >= rangAt && now - rangAt < every) return rangAt + every;
        last.set(claim, now);
        void pinger.send({ id: claim, title: text, body: '', loud: true, repeat: true });
        return now + every;
      });
      return times.length === 0 ? null : Math.min(...times);
    },
  };
}
