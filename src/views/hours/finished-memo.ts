import type { Bench } from '../../tracker/bench/index.ts';
import {
  finishedShare,
  finishedTogether,
  type FinishedHours,
  type FinishedShare,
} from '../../tracker/estimate/index.ts';
import { minute, type Instant } from '../../tracker/time/index.ts';
import type { PastPieces } from '../screens.ts';

type Kept = {
  readonly past: PastPieces | null;
  readonly minute: number;
  readonly hours: FinishedHours;
};

const keptByBench = new WeakMap<Bench, Kept>();
const sharesOfHistory = new WeakMap<Bench, FinishedShare>();

/**
 * Hours over finished pieces, kept from key to key: with ten years of history they take longer to work out than a frame
 * may. Benches are never changed in place, so one that is the same object is the same bench; nothing in the history is
 * in hand, so its share doesn't depend on the moment.
 */
export function finishedHours(bench: Bench, past: PastPieces | null, now: Instant): FinishedHours {
  const kept = keptByBench.get(bench);
  const thisMinute = Math.floor(now / minute);
  if (kept !== undefined && kept.past === past && kept.minute === thisMinute) return kept.hours;
  const shares = [finishedShare(bench, now)];
  if (past !== null) {
    const known = sharesOfHistory.get(past.bench) ?? finishedShare(past.bench, now);
    sharesOfHistory.set(past.bench, known);
    shares.push(known);
  }
  const hours = finishedTogether(shares);
  keptByBench.set(bench, { past, minute: thisMinute, hours });
  return hours;
}
