import type { FactStore } from '../../persist/index.ts';
import {
  foldBench,
  sendingsDue,
  type Bench,
  type PingFact,
  type PingSense,
  type Sending,
} from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { perhapsTwice, pingText, toldAgain } from '../../views/ping-text/index.ts';
import type { Shop } from '../../views/port.ts';
import { clockReading, type Clock } from '../clock.ts';
import { factHead } from '../head-facts.ts';
import type { NewId } from '../ids.ts';
import { claimedPings } from '../shown-pings.ts';
import type { Diagnostics } from './diagnostics.ts';
import { lostClaims, senderLostAfter, type LostClaims } from './lost-claims.ts';
import type { Standstill } from './standstill.ts';
import { createUnrecorded } from './unrecorded.ts';

export type ClaimingOptions = {
  readonly store: Pick<FactStore, 'change'>;
  readonly clock: Clock;
  readonly newId: NewId;
  readonly diagnostics: Diagnostics;
  readonly shop: () => Shop;
  readonly sense: () => PingSense;
  /** When this process began to watch: what fell due before it was missed because nothing was running. */
  readonly since: Instant;
};

/** A sending that this process has taken upon itself. */
export type Claim = {
  readonly fact: PingFact;
  readonly sending: Sending;
  readonly words: ReturnType<typeof pingText>;
};

/** Which pings are still to be sent, and taking them upon oneself so that no other process sends them. */
export type Claiming = {
  /** Claims whose sender is gone, as far as this process can tell. */
  readonly lostIn: (pings: readonly PingFact[]) => LostClaims;
  /** Keys of pings on record or sent from here without getting on record, less those that perhaps never went out. */
  readonly settledOf: (
    pings: readonly PingFact[],
    lost: ReadonlySet<string>,
  ) => ReadonlySet<string>;
  /**
   * Claims what is due under the lock, as the store has it by then. Where the store can't be written, what is known here
   * is claimed all the same, and says that it may come twice.
   */
  readonly claimDue: (known: {
    readonly bench: Bench;
    readonly pings: readonly PingFact[];
  }) => readonly Claim[];
  /** A claim goes out from here, and this process lives. */
  readonly sendsFromHere: (claim: string) => void;
  /** Keeps what the store would not take. */
  readonly keepUnrecorded: (fact: PingFact, claim: string, because: string) => void;
  /** Puts on record what was kept, where it is time to try again. @returns whether the store was told. */
  readonly retryUnrecorded: (now: Instant) => boolean;
};

export function createClaiming(options: ClaimingOptions, standstill: Standstill): Claiming {
  const { store, clock, newId, diagnostics } = options;
  const unrecorded = createUnrecorded(store);
  const sentHere = new Set<string>();

  const lostIn: Claiming['lostIn'] = (pings) =>
    lostClaims(pings, sentHere, clockReading(clock), standstill.wokeAt());

  const settledOf: Claiming['settledOf'] = (pings, lost) => {
    const onRecord = claimedPings(pings);
    if (unrecorded.keys.size === 0 && lost.size === 0) return onRecord;
    return new Set([...[...onRecord].filter((key) => !lost.has(key)), ...unrecorded.keys]);
  };

  const claimOf = (sending: Sending, lost: ReadonlySet<string>, now: Instant): Claim => {
    const first = pingText(sending, now, options.shop(), options.since, standstill.asleepFrom());
    const words = sending.settles.some((key) => lost.has(key)) ? toldAgain(first) : first;
    const piece = sending.pings[0]?.piece?.id ?? null;
    const head = factHead(newId(), clockReading(clock), 'clock');
    const body = { pings: sending.settles, text: words.text, loud: sending.loud, piece };
    return { sending, words, fact: { ...head, kind: 'ping-claimed', body } };
  };

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

  const keepUnrecorded: Claiming['keepUnrecorded'] = (fact, claim, because) => {
    unrecorded.keep([fact], clock.now());
    diagnostics.record({ at: clock.now(), what: 'unrecorded', claim, because });
  };

  const claimDue: Claiming['claimDue'] = (known) => {
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

  return {
    lostIn,
    settledOf,
    claimDue,
    sendsFromHere: (claim) => void sentHere.add(claim),
    keepUnrecorded,
    retryUnrecorded: unrecorded.retry,
  };
}
