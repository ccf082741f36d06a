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
import { minute, second, type Instant } from '../../tracker/time/index.ts';
import { perhapsTwice, pingText, toldAgain } from '../../views/ping-text/index.ts';
import type { Shop, ShownPing } from '../../views/port.ts';
import { clockReading, type Clock } from '../clock.ts';
import { factHead } from '../head-facts.ts';
import type { NewId } from '../ids.ts';
import { claimedPings } from '../shown-pings.ts';
import type { Awake } from './awake.ts';
import type { Diagnostics } from './diagnostics.ts';
import { lostClaims, senderLostAfter, type LostClaims } from './lost-claims.ts';
import type { Pinger } from './pinger.ts';
import { createRinging, notifyAgainAfter, ringAgainAfter } from './ringing.ts';
import { createUnrecorded } from './unrecorded.ts';

export type PingWatchOptions = {
  readonly store: Pick<FactStore, 'change'>;
  readonly clock: Clock;
  readonly newId: NewId;
  readonly pinger: Pinger;
  readonly awake: Awake;
  readonly keepAwake: () => boolean;
  readonly diagnostics: Diagnostics;
  readonly shop: () => Shop;
  readonly sense: () => PingSense;
  readonly known: () => Known;
  /** When this process began to watch: what fell due before it was missed because nothing was running. */
  readonly since: Instant;
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

type Claim = {
  readonly fact: PingFact;
  readonly sending: Sending;
  readonly words: ReturnType<typeof pingText>;
};

/** What a look found holds this long if nothing changes meanwhile. */
const looksAgainAfter = minute;
/** A look that comes later than this after it was to come: the machine slept, or this process was stopped. */
const stoodStillFor = 15 * second;

/**
 * Carries out what the core says is due. Each ping is claimed in the store, with every other process kept out, before
 * it goes out: whoever claims it sends it, and nobody else does, unless no word of its going out comes: then it is told
 * again, and says so. Where the store can't be written it goes out all the same, once from this process: a ping twice
 * is better than none.
 */
export function createPingWatch(options: PingWatchOptions): PingWatch {
  const { store, clock, newId, pinger, diagnostics, awake } = options;
  const unrecorded = createUnrecorded(store);
  const sentHere = new Set<string>();
  const ringing = createRinging(pinger, options.onScreen ? ringAgainAfter : notifyAgainAfter);
  let toldAwake = '';
  let isSpoiling = false;
  let wokeAt: Instant | null = null;
  /** When it was last there, for what is told of while it comes to. */
  let asleepFrom: Instant | undefined;
  let seenAt: Instant | undefined;
  let comesAgainAt: Instant = Number.POSITIVE_INFINITY;
  let last: {
    readonly known: Known;
    readonly sense: PingSense;
    readonly at: Instant;
    readonly next: Instant | null;
  } | null = null;

  const head = () => factHead(newId(), clockReading(clock), 'clock');

  /** Keys of pings on record or sent from here without getting on record, less those that perhaps never went out. */
  const settledOf = (
    pings: readonly PingFact[],
    lost: ReadonlySet<string>,
  ): ReadonlySet<string> => {
    const onRecord = claimedPings(pings);
    if (unrecorded.keys.size === 0 && lost.size === 0) return onRecord;
    return new Set([...[...onRecord].filter((key) => !lost.has(key)), ...unrecorded.keys]);
  };

  const claimOf = (sending: Sending, lost: ReadonlySet<string>, now: Instant): Claim => {
    const first = pingText(sending, now, options.shop(), options.since, asleepFrom);
    const words = sending.settles.some((key) => lost.has(key)) ? toldAgain(first) : first;
    const piece = sending.pings[0]?.piece?.id ?? null;
    const body = { pings: sending.settles, text: words.text, loud: sending.loud, piece };
    return { sending, words, fact: { ...head(), kind: 'ping-claimed', body } };
  };

  const lostIn = (pings: readonly PingFact[]): LostClaims =>
    lostClaims(pings, sentHere, clockReading(clock), wokeAt);

  const dueOn = (bench: Bench, pings: readonly PingFact[], now: Instant): readonly Claim[] => {
    const { keys: lost } = lostIn(pings);
    return sendingsDue(bench, settledOf(pings, lost), now, options.sense()).map((sending) =>
      claimOf(sending, lost, now),
    );
  };

  /**
   * Whether this process stood still with a claim in its hands, for so long that others count its sender as dead: then
   * whoever looks next tells of it, or has done so.
   */
  const isOverdue = ({ fact, sending }: Claim): boolean => {
    const { told, uptimeMs } = clockReading(clock);
    const age = uptimeMs === null ? 0 : uptimeMs - (fact.uptimeMs ?? uptimeMs);
    if (age < senderLostAfter) return false;
    const piece = sending.pings[0]?.piece?.name ?? null;
    const because = 'this process stood still when it was to send it';
    diagnostics.record({ at: told, what: 'dropped', pings: sending.settles, piece, because });
    return true;
  };

  const claimDue = (known: Known): readonly Claim[] => {
    let due: readonly Claim[] | null = null;
    const result = store.change((current) => {
      // Its turn may have come late, and the clock may have been set since the last fact.
      const bench = foldBench(current.bench, undefined, clockReading(clock));
      due = dueOn(bench, current.pings, clock.now());
      return { append: { pings: due.map(({ fact }) => fact) }, result: null };
    });
    // Where the store could not even be looked at, what is known here decides.
    const claims: readonly Claim[] = due ?? dueOn(known.bench, known.pings, clock.now());
    if (result.ok) return claims.filter((claim) => !isOverdue(claim));
    for (const { fact } of claims) keepUnrecorded(fact, fact.id, result.problem.says);
    return claims.map((claim) => ({ ...claim, words: perhapsTwice(claim.words) }));
  };

  const keepUnrecorded = (fact: PingFact, claim: string, because: string): void => {
    unrecorded.keep([fact], clock.now());
    diagnostics.record({ at: clock.now(), what: 'unrecorded', claim, because });
  };

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
    sentHere.add(fact.id);
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
        const sent: PingFact = { ...head(), kind: 'ping-sent', body };
        const written = store.change(() => ({ append: { pings: [sent] }, result: null }));
        if (written.ok) options.recorded();
        else keepUnrecorded(sent, fact.id, written.problem.says);
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
    const lost = lostIn(pings);
    const settled = settledOf(pings, lost.keys);
    if (sendingsDue(bench, settled, now, sense).length > 0) {
      for (const claim of claimDue(known)) send(claim);
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
    now < Math.min(last.next ?? Number.POSITIVE_INFINITY, last.at + looksAgainAfter);

  /** Notices that this process stood still, from a look that comes long after it was to come. */
  const noticeStandstill = (now: Instant): void => {
    const stoodStill = now - comesAgainAt > stoodStillFor;
    if (stoodStill) wokeAt = now;
    asleepFrom = stoodStill ? seenAt : undefined;
  };
  const lookedAt = (now: Instant, next: Instant | null): void => {
    comesAgainAt = Math.min(next ?? Number.POSITIVE_INFINITY, now + looksAgainAfter);
    seenAt = now;
  };

  return {
    spoils: () => isSpoiling,
    lookOnly: () => {
      const now = clock.now();
      noticeStandstill(now);
      const { bench, pings } = options.known();
      const sense = options.sense();
      const lost = lostIn(pings);
      const settled = settledOf(pings, lost.keys);
      const next = soonest([lost.nextAt, nextPingAt(bench, settled, now, sense)]);
      lookedAt(now, next);
      return { isDue: sendingsDue(bench, settled, now, sense).length > 0, next };
    },
    look: () => {
      const now = clock.now();
      noticeStandstill(now);
      if (unrecorded.retry(now)) options.recorded();
      const known = options.known();
      const sense = options.sense();
      if (last === null || !isStillTrue(known, sense, now))
        last = { known, sense, at: now, next: lookClosely(known, sense, now) };
      lookedAt(now, last.next);
      tellAwake(now);
      return last.next;
    },
  };
}

function soonest(times: readonly (Instant | null)[]): Instant | null {
  const ahead = times.filter((at) => at !== null);
  return ahead.length === 0 ? null : Math.min(...ahead);
}
