import type { PingFact } from '../../tracker/bench/index.ts';
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

/** @param sentHere claims whose sender is this process, which lives */
export function lostClaims(
  facts: readonly PingFact[],
  sentHere: ReadonlySet<string>,
  now: Instant,
): LostClaims {
  const keys = new Set<string>();
  const claims = new Set<string>();
  let nextAt: Instant | null = null;
  for (const { claim, at, pings } of unanswered(facts)) {
    if (sentHere.has(claim)) continue;
    const lostAt = at + senderLostAfter;
    if (lostAt <= now) {
      claims.add(claim);
      for (const key of pings) keys.add(key);
    } else nextAt = Math.min(nextAt ?? lostAt, lostAt);
  }
  return { keys, claims, nextAt };
}

type Unanswered = {
  readonly claim: string;
  readonly at: Instant;
  readonly pings: readonly string[];
};

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
    return [{ claim: fact.id, at: fact.at, pings }];
  });
}

/** Seen, or sent by at least one way. */
const isAnswer = (fact: PingFact): fact is Exclude<PingFact, { kind: 'ping-claimed' }> =>
  fact.kind === 'ping-acknowledged' || (fact.kind === 'ping-sent' && fact.body.ways.length > 0);

/** A ping's key is its window's, and after the last slash its name. */
const windowOf = (key: string): string => key.slice(0, key.lastIndexOf('/'));
