import type { Instant } from '../tracker/time/index.ts';
import type { ShownPing } from '../views/port.ts';

/** Pings that a key took note of while that could not be written: they stop in this process all the same. */
export type SeenPings = {
  readonly note: (claims: readonly string[], at: Instant) => void;
  /** The pings on record, with what was noted here. */
  readonly on: (pings: readonly ShownPing[]) => readonly ShownPing[];
};

export function createSeenPings(): SeenPings {
  const seenAt = new Map<string, Instant>();
  return {
    note: (claims, at) => {
      for (const claim of claims) seenAt.set(claim, at);
    },
    on: (pings) =>
      seenAt.size === 0
        ? pings
        : pings.map((ping) =>
            ping.seenAt === null ? { ...ping, seenAt: seenAt.get(ping.claim) ?? null } : ping,
          ),
  };
}
