import type { Bench } from '../../tracker/bench/index.ts';
import { hoursOfFinished } from '../../tracker/estimate/index.ts';
import { reviewOf, type Review } from '../../tracker/review/index.ts';
import { minute, type Instant } from '../../tracker/time/index.ts';
import { monthIn } from '../format/index.ts';
import type { Snapshot } from '../port.ts';

type Kept = { readonly minute: number; readonly zone: string; readonly review: Review };

const keptByBench = new WeakMap<Bench, Kept>();

/**
 * Finished pieces looked over: those of past years too once they are read, till then those that are on the bench. These are
 * kept from key to key. Benches are never changed in place, so one that is the same object is the same bench.
 */
export function reviewOfAll({ bench, shop, lookingBack }: Snapshot, now: Instant): Review {
  const whole = lookingBack?.review ?? null;
  if (whole !== null) return whole;
  const { zone } = shop;
  const kept = keptByBench.get(bench);
  const thisMinute = Math.floor(now / minute);
  if (kept?.minute === thisMinute && kept.zone === zone) return kept.review;
  const review = reviewOf(hoursOfFinished([bench], now), monthIn(zone));
  keptByBench.set(bench, { minute: thisMinute, zone, review });
  return review;
}
