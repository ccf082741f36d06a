import type { FactStore } from '../../persist/index.ts';
import {
  foldBench,
  nextPingAt,
  sendingsDue,
  spoilsRunning,
  type Bench,
  type PingFact,
  type PingSense,
  type Sending,
} from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { pingText } from '../../views/ping-text/index.ts';
import type { Shop } from '../../views/port.ts';
import type { Clock } from '../clock.ts';
import type { NewId } from '../ids.ts';
import { claimedPings, shownPings } from '../shown-pings.ts';
import type { Awake } from './awake.ts';
import type { Diagnostics } from './diagnostics.ts';
import type { Pinger } from './pinger.ts';
import { createRinging } from './ringing.ts';

export type PingWatchOptions = {
  readonly store: FactStore;
  readonly clock: Clock;
  readonly newId: NewId;
  readonly pinger: Pinger;
  readonly awake: Awake;
  readonly keepAwake: () => boolean;
  readonly diagnostics: Diagnostics;
  readonly shop: () => Shop;
  readonly sense: () => PingSense;
  /** The bench as this process knows it, and the pings on record. */
  readonly known: () => { readonly bench: Bench; readonly pings: readonly PingFact[] };
  /** When this process began to watch: what fell due before it was missed because nothing was running. */
  readonly since: Instant;
  /** Something was written to the store from here. */
  readonly recorded: () => void;
};

export type PingWatch = {
  /** Sends what is due and answers when to look again; null while nothing is to come. Cheap when nothing is due. */
  readonly look: () => Instant | null;
};

type Claim = {
  readonly fact: PingFact;
  readonly sending: Sending;
  readonly words: ReturnType<typeof pingText>;
};

/**
 * Carries out what the core says is due. Each ping is claimed in the store, with every other process kept out, before
 * it goes out: whoever claims it sends it, and nobody else does. Where the store can't be written it goes out all the
 * same, once from this process: a ping twice is better than none.
 */
export function createPingWatch(options: PingWatchOptions): PingWatch {
  const { store, clock, newId, pinger, diagnostics, awake } = options;
  const unrecordedHere = new Set<string>();
  const ringing = createRinging(pinger);
  let toldAwake = '';

  const headOf = (group: string, now: Instant) => ({
    id: `${group}.1`,
    group,
    at: now,
    told: now,
    by: 'clock' as const,
    uptimeMs: clock.uptime(),
    bootId: clock.bootId,
  });

  /** Keys of pings on record, and of those that went out from here without getting on record. */
  const allClaimed = (pings: readonly PingFact[]): ReadonlySet<string> => {
    const claimed = claimedPings(pings);
    return unrecordedHere.size === 0 ? claimed : new Set([...claimed, ...unrecordedHere]);
  };

  const claimOf = (sending: Sending, now: Instant): Claim => {
    const words = pingText(sending, now, options.shop(), options.since);
    const piece = sending.pings[0]?.piece?.id ?? null;
    const body = { pings: sending.settles, text: words.text, loud: sending.loud, piece };
    return { sending, words, fact: { ...headOf(newId(), now), kind: 'ping-claimed', body } };
  };

  const claimDue = (now: Instant): readonly Claim[] => {
    let due: readonly Claim[] = [];
    const result = store.change((current) => {
      const claimed = allClaimed(current.pings);
      due = sendingsDue(foldBench(current.bench), claimed, now, options.sense()).map((sending) =>
        claimOf(sending, now),
      );
      return { append: { pings: due.map(({ fact }) => fact) }, result: null };
    });
    if (!result.ok) {
      for (const { fact, sending } of due) {
        for (const key of sending.settles) unrecordedHere.add(key);
        unrecorded(fact.id, result.problem.says);
      }
    }
    return due;
  };

  const unrecorded = (claim: string, because: string): void =>
    diagnostics.record({ at: clock.now(), what: 'unrecorded', claim, because });

  const send = ({ fact, sending, words }: Claim, now: Instant): void => {
    const { settles, loud, lateBy, pings } = sending;
    const piece = pings[0]?.piece?.name ?? null;
    const dueAt = now - lateBy;
    diagnostics.record({ at: now, what: 'due', pings: settles, piece, loud, dueAt });
    diagnostics.record({
      at: now,
      what: 'claimed',
      claim: fact.id,
      pings: settles,
      lateMs: lateBy,
    });
    if (loud) ringing.rang(fact.id, now);
    void pinger
      .send({ id: fact.id, title: words.title, body: words.body, loud })
      .then(({ ways, failures }) => {
        const at = clock.now();
        diagnostics.record({
          at,
          what: 'sent',
          claim: fact.id,
          piece,
          ways,
          failures,
          lateMs: lateBy,
        });
        const body = { claim: fact.id, ways: ['screen', ...ways], failures };
        const sent: PingFact = { ...headOf(newId(), at), kind: 'ping-sent', body };
        const written = store.change(() => ({ append: { pings: [sent] }, result: null }));
        if (written.ok) options.recorded();
        else unrecorded(fact.id, written.problem.says);
      });
  };

  const tellAwake = (now: Instant): void => {
    const { wanted, kept, why } = awake.state();
    const told = wanted ? `${kept} ${why}` : '';
    if (told !== toldAwake && wanted) diagnostics.record({ at: now, what: 'awake', kept, why });
    toldAwake = told;
  };

  return {
    look: () => {
      const now = clock.now();
      const { bench, pings } = options.known();
      const claimed = allClaimed(pings);
      const sense = options.sense();
      if (sendingsDue(bench, claimed, now, sense).length > 0) {
        for (const claim of claimDue(now)) send(claim, now);
        options.recorded();
      }
      const spoiling = spoilsRunning(bench, now, sense)[0];
      const piece = spoiling && bench.pieces.get(spoiling.subject.pieceId);
      const reason = spoiling && `${piece?.name ?? 'a window'}, ${spoiling.rule.verb}`;
      awake.want(options.keepAwake() ? (reason ?? null) : null);
      tellAwake(now);
      const again = spoiling === undefined ? null : ringing.ring(shownPings(pings), now);
      const next = nextPingAt(bench, claimed, now, sense);
      return next === null ? again : again === null ? next : Math.min(next, again);
    },
  };
}
