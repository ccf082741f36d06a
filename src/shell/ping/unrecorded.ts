import type { FactStore } from '../../persist/index.ts';
import type { PingFact } from '../../tracker/bench/index.ts';
import { second, type Instant, type Milliseconds } from '../../tracker/time/index.ts';
import { claimedPings } from '../shown-pings.ts';

/** A store that is locked by a process that hangs holds up every try for seconds. */
const triesAgainAfter: Milliseconds = 30 * second;

/** What the store would not take of pings that went out from here: kept, and put on record once it does. */
export type Unrecorded = {
  /** Keys of pings that went out from here, whatever the store says of them. */
  readonly keys: ReadonlySet<string>;
  readonly keep: (facts: readonly PingFact[], now: Instant) => void;
  /** Tries again where it is time. @returns whether the store was told. */
  readonly retry: (now: Instant) => boolean;
};

export function createUnrecorded(store: Pick<FactStore, 'change'>): Unrecorded {
  const keys = new Set<string>();
  let waiting: readonly PingFact[] = [];
  let triedAt: Instant = Number.NEGATIVE_INFINITY;

  return {
    keys,
    keep: (facts, now) => {
      for (const fact of facts)
        if (fact.kind === 'ping-claimed') for (const key of fact.body.pings) keys.add(key);
      waiting = [...waiting, ...facts];
      triedAt = now;
    },
    retry: (now) => {
      if (waiting.length === 0 || Math.abs(now - triedAt) < triesAgainAfter) return false;
      triedAt = now;
      const tried = waiting;
      const result = store.change((current) => ({
        append: { pings: stillToTell(tried, claimedPings(current.pings)) },
        result: null,
      }));
      if (!result.ok) return false;
      waiting = waiting.filter((fact) => !tried.includes(fact));
      for (const fact of tried)
        if (fact.kind === 'ping-claimed') for (const key of fact.body.pings) keys.delete(key);
      return true;
    },
  };
}

/** Without what somebody else has told meanwhile, who got on record with it. */
function stillToTell(
  facts: readonly PingFact[],
  claimed: ReadonlySet<string>,
): readonly PingFact[] {
  const told = new Set(
    facts.flatMap((fact) =>
      fact.kind === 'ping-claimed' && fact.body.pings.every((key) => claimed.has(key))
        ? [fact.id]
        : [],
    ),
  );
  return facts.filter(
    (fact) => !told.has(fact.kind === 'ping-claimed' ? fact.id : fact.body.claim),
  );
}
