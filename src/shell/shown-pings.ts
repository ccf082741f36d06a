import type { PingFact } from '../tracker/bench/index.ts';
import type { Settings } from '../tracker/settings/index.ts';
import type { PingWays, ShownPing } from '../views/port.ts';

const knownLogs = new WeakMap<readonly PingFact[], readonly ShownPing[]>();

/** The log of pings as screens show it, oldest first; worked out once for each state of the store. */
export function shownPings(facts: readonly PingFact[]): readonly ShownPing[] {
  const known = knownLogs.get(facts);
  if (known !== undefined) return known;
  const log = logOf(facts);
  knownLogs.set(facts, log);
  return log;
}

function logOf(facts: readonly PingFact[]): readonly ShownPing[] {
  const shown = new Map<string, ShownPing>();
  for (const fact of facts) {
    switch (fact.kind) {
      case 'ping-claimed': {
        const { text, loud, piece } = fact.body;
        shown.set(fact.id, {
          claim: fact.id,
          at: fact.at,
          text,
          loud,
          piece,
          seenAt: null,
          ways: null,
          failures: [],
        });
        break;
      }
      case 'ping-sent': {
        const ping = shown.get(fact.body.claim);
        if (ping)
          shown.set(ping.claim, { ...ping, ways: fact.body.ways, failures: fact.body.failures });
        break;
      }
      case 'ping-acknowledged': {
        const ping = shown.get(fact.body.claim);
        if (ping) shown.set(ping.claim, { ...ping, seenAt: ping.seenAt ?? fact.at });
        break;
      }
    }
  }
  return [...shown.values()];
}

const knownClaims = new WeakMap<readonly PingFact[], ReadonlySet<string>>();

/** Keys of all pings that were claimed; worked out once for each state of the store. */
export function claimedPings(facts: readonly PingFact[]): ReadonlySet<string> {
  const known = knownClaims.get(facts);
  if (known !== undefined) return known;
  const claimed = new Set(
    facts.flatMap((fact) => (fact.kind === 'ping-claimed' ? fact.body.pings : [])),
  );
  knownClaims.set(facts, claimed);
  return claimed;
}

/** By which ways pings go out, as far as it is known: the last one that was sent tells whether the desktop showed it. */
export function pingWays(
  facts: readonly PingFact[],
  settings: Pick<Settings, 'bell' | 'desktop'>,
): PingWays {
  const sent = shownPings(facts).findLast((ping) => ping.ways !== null);
  const hasDesktop = sent === undefined ? null : (sent.ways?.includes('desktop') ?? false);
  const tried = hasDesktop === null ? 'not tried yet' : hasDesktop ? 'yes' : 'no';
  const bell = settings.bell === 'never' ? 'no' : 'yes';
  return {
    desktop: hasDesktop,
    says: `Pings: desktop ${settings.desktop ? tried : 'off'}, bell ${bell}.`,
  };
}
