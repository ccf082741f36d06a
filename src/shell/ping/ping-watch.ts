import {
  nextPingAt,
  sendingsDue,
  spoilsRunning,
  type Bench,
  type PingFact,
  type PingSense,
} from '../../tracker/bench/index.ts';
import { minute, type Instant } from '../../tracker/time/index.ts';
import type { ShownPing } from '../../views/port.ts';
import { clockReading } from '../clock.ts';
import { factHead } from '../head-facts.ts';
import type { Awake } from './awake.ts';
import { createClaiming, type Claim, type ClaimingOptions } from './claiming.ts';
import type { Pinger } from './pinger.ts';
import { createRinging, notifyAgainAfter, ringAgainAfter } from './ringing.ts';
import { createStandstill } from './standstill.ts';

export type PingWatchOptions = ClaimingOptions & {
  readonly pinger: Pinger;
  readonly awake: Awake;
  readonly keepAwake: () => boolean;
  readonly known: () => Known;
  /** Something was written to the store from here. */
  readonly recorded: () => void;
  /** Whether a screen shows them too. */
  readonly onScreen: boolean;
};

/** The bench as this process knows it, the pings on record, and the same as screens show them. */
type Known = {
  readonly bench: Bench;
  readonly pings: readonly PingFact[];
  readonly shown: readonly ShownPing[];
};

export type PingWatch = {
  /** Whether something that can spoil was running at the last look. */
  readonly spoils: () => boolean;
  /** Sends what is due and answers when to look again; null while nothing is to come. Cheap when nothing is due. */
  readonly look: () => Instant | null;
  /** Whether something is due that nobody has sent, and when the next is; sends nothing. */
  readonly lookOnly: () => { readonly isDue: boolean; readonly next: Instant | null };
};

/** What a look found holds this long if nothing changes meanwhile. */
const looksAgainAfter = minute;

/**
 * Carries out what the core says is due. Each ping is claimed in the store, with every other process kept out, before
 * it goes out: whoever claims it sends it, and nobody else does, unless no word of its going out comes: then it is told
 * again, and says so. Where the store can't be written it goes out all the same, once from this process: a ping twice
 * is better than none.
 */
export function createPingWatch(options: PingWatchOptions): PingWatch {
  const { store, clock, newId, pinger, diagnostics, awake } = options;
  const standstill = createStandstill();
  const claiming = createClaiming(options, standstill);
  const ringing = createRinging(pinger, options.onScreen ? ringAgainAfter : notifyAgainAfter);
  let toldAwake = '';
  let isSpoiling = false;
  let last: {
    readonly known: Known;
    readonly sense: PingSense;
    readonly at: Instant;
    readonly next: Instant | null;
  } | null = null;

  const send = (claim: Claim): void => {
    const { fact, sending, words } = claim;
    const { settles, loud, lateBy, pings } = sending;
    const now = clock.now();
    const piece = pings[0]?.piece?.name ?? null;
    const dueAt = fact.at - lateBy;
    diagnostics.record({ at: now, what: 'due', pings: settles, piece, loud, dueAt });
    diagnostics.record({
      at: now,
      what: 'claimed',
      claim: fact.id,
      pings: settles,
      lateMs: lateBy,
    });
    claiming.sendsFromHere(fact.id);
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
        const all = options.onScreen ? ['screen', ...ways] : ways;
        const body = { claim: fact.id, ways: all, failures };
        const sent: PingFact = {
          ...factHead(newId(), clockReading(clock), 'clock'),
          kind: 'ping-sent',
          body,
        };
        const written = store.change(() => ({ append: { pings: [sent] }, result: null }));
        if (written.ok) options.recorded();
        else claiming.keepUnrecorded(sent, fact.id, written.problem.says);
      });
  };

  const tellAwake = (now: Instant): void => {
    const { wanted, kept, why } = awake.state();
    const told = wanted ? `${kept} ${why}` : '';
    if (told !== toldAwake && wanted) diagnostics.record({ at: now, what: 'awake', kept, why });
    toldAwake = told;
  };

  const lookClosely = (known: Known, sense: PingSense, now: Instant): Instant | null => {
    const { bench, pings, shown } = known;
    const lost = claiming.lostIn(pings);
    const settled = claiming.settledOf(pings, lost.keys);
    if (sendingsDue(bench, settled, now, sense).length > 0) {
      for (const claim of claiming.claimDue(known)) send(claim);
      options.recorded();
    }
    const spoiling = spoilsRunning(bench, now, sense);
    const [worst] = spoiling;
    isSpoiling = worst !== undefined;
    const piece = worst && bench.pieces.get(worst.subject.pieceId);
    const reason = worst && `${piece?.name ?? 'a window'}, ${worst.rule.verb}`;
    awake.want(options.keepAwake() ? (reason ?? null) : null);
    // What was seen to from elsewhere, or is long lost, rings no more.
    const pieces = new Set(spoiling.map(({ subject }) => subject.pieceId));
    const ringAt = ringing.ring(
      shown.filter(
        ({ piece: about, claim }) => about !== null && pieces.has(about) && !lost.claims.has(claim),
      ),
      now,
    );
    return soonest([ringAt, lost.nextAt, nextPingAt(bench, settled, now, sense)]);
  };

  /** Whether nothing has changed, and nothing fallen due, since the last look. */
  const isStillTrue = (known: Known, sense: PingSense, now: Instant): boolean =>
    last !== null &&
    last.known.bench === known.bench &&
    last.known.pings === known.pings &&
    last.known.shown === known.shown &&
    last.sense === sense &&
    now >= last.at &&
    now < againBy(last.at, last.next);

  return {
    spoils: () => isSpoiling,
    lookOnly: () => {
      const now = clock.now();
      standstill.looks(now);
      const { bench, pings } = options.known();
      const sense = options.sense();
      const lost = claiming.lostIn(pings);
      const settled = claiming.settledOf(pings, lost.keys);
      const next = soonest([lost.nextAt, nextPingAt(bench, settled, now, sense)]);
      standstill.looked(now, againBy(now, next));
      return { isDue: sendingsDue(bench, settled, now, sense).length > 0, next };
    },
    look: () => {
      const now = clock.now();
      standstill.looks(now);
      if (claiming.retryUnrecorded(now)) options.recorded();
      const known = options.known();
      const sense = options.sense();
      if (last === null || !isStillTrue(known, sense, now))
        last = { known, sense, at: now, next: lookClosely(known, sense, now) };
      standstill.looked(now, againBy(now, last.next));
      tellAwake(now);
      return last.next;
    },
  };
}

/** When the look after one at `at` is to come at the latest. */
const againBy = (at: Instant, next: Instant | null): Instant =>
  Math.min(next ?? Number.POSITIVE_INFINITY, at + looksAgainAfter);

function soonest(times: readonly (Instant | null)[]): Instant | null {
  const ahead = times.filter((at) => at !== null);
  return ahead.length === 0 ? null : Math.min(...ahead);
}
