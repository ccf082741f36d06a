import { hour, minute, type Instant, type Milliseconds } from '../time/index.ts';
import { readingHoldsFor } from '../windows/air/shop-air.ts';
import type { ConditionsFact } from './facts.ts';

/** Air that changed by less than this since a reading is told by that reading (common practice, no source). */
type Change = { readonly tempC: number; readonly rh: number; readonly within: Milliseconds };
const lately: Change = { tempC: 0.5, rh: 3, within: 15 * minute };
/** Long ago a reading has to tell less, but none may be so far from the next that a night low would come in. */
const longAgo: Change = { tempC: 2, rh: 10, within: readingHoldsFor - hour };

/** What is younger than this is kept as it came. */
const longAgoIs: Milliseconds = 6 * 7 * 24 * hour;

/**
 * The reading that a new one makes needless, for a script that reads every minute: the one between, where it tells next to
 * nothing that the one before it doesn't and no time was lost. So the newest is always there, as its age counts; and what
 * is lost moves a sum by less than half a degree for a quarter of an hour. What a person read is never dropped.
 */
export function madeNeedless(
  facts: readonly ConditionsFact[],
  next: ConditionsFact,
): ReadonlySet<string> {
  const [before, last] = facts.slice(-2);
  if (before === undefined || last === undefined) return new Set();
  return isNeedless(last, before, next.at, lately) ? new Set([last.id]) : new Set();
}

/**
 * Readings of long ago that tell next to nothing.
 *
 * @param neededFrom since when pieces on the bench may hang on them: from then on all are kept
 */
export function needlessOfOld(
  facts: readonly ConditionsFact[],
  now: Instant,
  neededFrom: Instant,
): ReadonlySet<string> {
  const until = Math.min(now - longAgoIs, neededFrom - readingHoldsFor);
  const needless = new Set<string>();
  let kept: ConditionsFact | undefined;
  for (const [index, fact] of facts.entries()) {
    const next = facts[index + 1];
    if (next === undefined || next.at >= until) break;
    if (kept !== undefined && isNeedless(fact, kept, next.at, longAgo)) needless.add(fact.id);
    else kept = fact;
  }
  return needless;
}

/** Whether the reading before it can stand for one until the next, without a gap. */
const isNeedless = (
  fact: ConditionsFact,
  before: ConditionsFact,
  next: Instant,
  { tempC, rh, within }: Change,
): boolean =>
  fact.by === 'script' &&
  fact.body.surfaceC === undefined &&
  before.at <= fact.at &&
  fact.at <= next &&
  next - before.at < within &&
  Math.abs(fact.body.tempC - before.body.tempC) < tempC &&
  Math.abs(fact.body.rh - before.body.rh) < rh;
