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
import type { Instant, Milliseconds } from '../../tracker/time/index.ts';
import { pingText } from '../../views/ping-text/index.ts';
import type { Shop, ShownPing } from '../../views/port.ts';
import type { Clock } from '../clock.ts';
import type { NewId } from '../ids.ts';
import { claimedPings, shownPings } from '../shown-pings.ts';
import type { Awake } from './awake.ts';
import type { Diagnostics } from './diagnostics.ts';
import type { Pinger } from './pinger.ts';

/** A loud ping rings again after this long, until a key or a command takes note of it. */
export const ringAgainAfter: Milliseconds = 20_000;

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
  /** When this process began to watch: what fell due before it was missed because nothing was running. */
  readonly since: Instant;
};

export type PingWatch = {
  /** Sends what is due and answers when to look again; null while nothing is to come. Cheap when nothing is due. */
  readonly look: () => Instant | null;
};

/**
 * Carries out what the core says is due. Each ping is claimed in the store, with every other process kept out, before
 * it goes out: whoever claims it sends it, and nobody else does.
 */
export function createPingWatch(options: PingWatchOptions): PingWatch {
  const { store, clock, newId, pinger, diagnostics } = options;
  const rang = new Map<string, Instant>();

  const claim = (
    now: Instant,
  ): readonly { readonly fact: PingFact; readonly sending: Sending }[] => {
    const result = store.change((current) => {
      const bench = foldBench(current.bench);
      const due = sendingsDue(bench, claimedPings(current.pings), now, options.sense());
      const claims = due.map((sending) => ({ sending, fact: claimFact(sending, now) }));
      return { append: { pings: claims.map(({ fact }) => fact) }, result: claims };
    });
    if (!result.ok) {
      diagnostics.record({
        at: now,
        what: 'dropped',
        pings: [],
        piece: null,
        because: result.problem.says,
      });
      return [];
    }
    return result.value;
  };

  const claimFact = (sending: Sending, now: Instant): PingFact => {
    const group = newId();
    const words = pingText(sending, now, options.shop(), options.since);
    const first = sending.pings[0];
    return {
      ...headOf(group, now),
      kind: 'ping-claimed',
      body: {
        pings: sending.settles,
        text: words.text,
        loud: sending.loud,
        piece: first?.piece?.id ?? null,
      },
    };
  };

  const headOf = (group: string, now: Instant) => ({
    id: `${group}.1`,
    group,
    at: now,
    told: now,
    by: 'clock' as const,
    uptimeMs: clock.uptime(),
    bootId: clock.bootId,
  });

  const send = (fact: PingFact, sending: Sending, now: Instant): void => {
    const words = pingText(sending, now, options.shop(), options.since);
    diagnostics.record({
      at: now,
      what: 'claimed',
      claim: fact.id,
      pings: sending.settles,
      lateMs: sending.lateBy,
    });
    rang.set(fact.id, now);
    const ping = { id: fact.id, title: words.title, body: words.body, loud: sending.loud };
    void pinger.send(ping).then(({ ways, failures }) => {
      const at = clock.now();
      const piece = sending.pings[0]?.piece?.name ?? null;
      diagnostics.record({
        at,
        what: 'sent',
        claim: fact.id,
        piece,
        ways,
        failures,
        lateMs: sending.lateBy,
      });
      const sent: PingFact = {
        ...headOf(newId(), at),
        kind: 'ping-sent',
        body: { claim: fact.id, ways: ['screen', ...ways], failures },
      };
      const written = store.change(() => ({ append: { pings: [sent] }, result: null }));
      if (!written.ok)
        diagnostics.record({
          at,
          what: 'dropped',
          pings: [],
          piece,
          because: written.problem.says,
        });
    });
  };

  /** Rings again for what is loud and not silenced, as long as its window still runs. */
  const ringAgain = (bench: Bench, pings: readonly ShownPing[], now: Instant): Instant | null => {
    const standing = pings.filter(
      (ping) => ping.loud && ping.seenAt === null && rang.has(ping.claim),
    );
    if (standing.length === 0 || spoilsRunning(bench, now, options.sense()).length === 0)
      return null;
    let next: Instant | null = null;
    for (const ping of standing) {
      const last = rang.get(ping.claim) ?? now;
      if (now - last >= ringAgainAfter) {
        rang.set(ping.claim, now);
        void pinger.send({ id: ping.claim, title: ping.text, body: '', loud: true, repeat: true });
      }
      const again = (rang.get(ping.claim) ?? now) + ringAgainAfter;
      next = next === null ? again : Math.min(next, again);
    }
    return next;
  };

  return {
    look: () => {
      const now = clock.now();
      const loaded = store.load();
      if (!loaded.ok) return null;
      const bench = foldBench(loaded.value.bench);
      const claimed = claimedPings(loaded.value.pings);
      if (sendingsDue(bench, claimed, now, options.sense()).length > 0) {
        for (const { fact, sending } of claim(now)) send(fact, sending, now);
      }
      const spoiling = spoilsRunning(bench, now, options.sense())[0];
      const piece = spoiling === undefined ? undefined : bench.pieces.get(spoiling.subject.pieceId);
      options.awake.want(
        spoiling === undefined || !options.keepAwake()
          ? null
          : `${piece?.name ?? 'a window'}, ${spoiling.rule.verb}`,
      );
      const ring = ringAgain(bench, shownPings(loaded.value.pings), now);
      const next = nextPingAt(bench, claimed, now, options.sense());
      return next === null ? ring : ring === null ? next : Math.min(next, ring);
    },
  };
}
