import type { ClockReading, PingFact } from '../../tracker/bench/index.ts';
import { second, type Instant, type Milliseconds } from '../../tracker/time/index.ts';

/** A claim with no word of its going out for this long has lost its sender; the slowest way answers in 5 seconds. */
export const senderLostAfter: Milliseconds = 30 * second;

/**
 * Keys of pings that perhaps never went out, the claims they were made by, and when the next claim will count among them
 * if no word comes.
 */
export type LostClaims = {
  readonly keys: ReadonlySet<string>;
  readonly claims: ReadonlySet<string>;
  readonly nextAt: Instant | null;
};

/**
 * @param sentHere claims whose sender is this process, which lives
 * @param present what the clock shows
 * @param wokeAt when this process last went on after it had stood still. Whoever claims stood still with it, and gets as
 *   long as ever to say that its ping went out.
 */
export function lostClaims(
  facts: readonly PingFact[],
  sentHere: ReadonlySet<string>,
  present: ClockReading,
  wokeAt: Instant | null = null,
): LostClaims {
  const keys = new Set<string>();
  const claims = new Set<string>();
  let nextAt: Instant | null = null;
  const now = present.told;
  for (const { fact, pings } of unanswered(facts)) {
    const claim = fact.id;
    if (sentHere.has(claim)) continue;
    const claimedAt = now - ageOf(fact, present);
    const lostAt = Math.max(claimedAt, Math.min(wokeAt ?? claimedAt, now)) + senderLostAfter;
    if (lostAt <= now) {
      claims.add(claim);
      for (const key of pings) keys.add(key);
    } else nextAt = Math.min(nextAt ?? lostAt, lostAt);
  }
  return { keys, claims, nextAt };
}

/** By the machine's own time where that is known: the clock may have been set since. */
function ageOf({ at, uptimeMs, bootId }: PingFact, present: ClockReading): Milliseconds {
  const isOfThisStart = bootId !== null && bootId === present.bootId;
  if (isOfThisStart && uptimeMs !== null && present.uptimeMs !== null)
    return present.uptimeMs - uptimeMs;
  const age = present.told - at;
  // Whoever claimed it ended with the start of the machine before this one.
  return age < 0 && bootId !== null && present.bootId !== null && !isOfThisStart
    ? senderLostAfter
    : age;
}

type Claimed = Extract<PingFact, { kind: 'ping-claimed' }>;

type Unanswered = { readonly fact: Claimed; readonly pings: readonly string[] };

const known = new WeakMap<readonly PingFact[], readonly Unanswered[]>();

/**
 * Claims of which nothing says that they went out or were seen, or that left by no way at all, unless a later one told
 * of the same window; worked out once for each state of the store.
 */
function unanswered(facts: readonly PingFact[]): readonly Unanswered[] {
  const before = known.get(facts);
  if (before !== undefined) return before;
  const found = findUnanswered(facts);
  known.set(facts, found);
  return found;
}

function findUnanswered(facts: readonly PingFact[]): readonly Unanswered[] {
  const answered = new Set(facts.flatMap((fact) => (isAnswer(fact) ? [fact.body.claim] : [])));
  const latest = new Map<string, string>();
  for (const fact of facts) {
    if (fact.kind !== 'ping-claimed') continue;
    for (const key of fact.body.pings) latest.set(windowOf(key), fact.id);
  }
  return facts.flatMap((fact): Unanswered[] => {
    if (fact.kind !== 'ping-claimed' || answered.has(fact.id)) return [];
    const pings = fact.body.pings.filter((key) => latest.get(windowOf(key)) === fact.id);
    return [{ fact, pings }];
  });
}

/** Seen, or sent by at least one way. */
const isAnswer = (fact: PingFact): fact is Exclude<PingFact, { kind: 'ping-claimed' }> =>
  fact.kind === 'ping-acknowledged' || (fact.kind === 'ping-sent' && fact.body.ways.length > 0);

/** A ping's key is its window's, and after the last slash its name. */
const windowOf = (key: string): string => key.slice(0, key.lastIndexOf('/'));
