import { stampSays, type OutrightStamp } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { opensAt, stateAt } from '../../tracker/windows/index.ts';
import { whenInWords, type ShopClock } from './clock.ts';
import { losingEnd } from './outlook.ts';

/** `topped up`, `A topped up`, `washed out`. */
export const stampName = ({ step, event, agent }: OutrightStamp): string =>
  stampSays({ ...step, passes: 1 }, { event, agent, pass: 1, section: null });

/** What a stamp would do to a window: `scrape till 14:00, was 13:00`, `ends "clamps off"`, `starts "next coat", from 15:10`. */
export function stampEffect(
  { before, after }: OutrightStamp,
  now: Instant,
  shop: ShopClock,
): string {
  const { verb } = after.rule;
  const when = (at: Instant): string => whenInWords(at, now, shop);
  if (after.closedAt !== null) {
    const opening = before === null || stateAt(before, now) !== 'before' ? null : opensAt(before);
    return `ends "${verb}"${opening === null ? '' : `, which opens ${when(opening)}`}`;
  }
  const opens = edgesOf(opensAt(before ?? after), opensAt(after), before === null);
  const ends = edgesOf(losingEnd(before ?? after, now), losingEnd(after, now), before === null);
  const told = [
    ...(opens === null || opens.now <= now ? [] : [`from ${when(opens.now)}${was(opens, when)}`]),
    ...(ends === null ? [] : [`till ${when(ends.now)}${was(ends, when)}`]),
  ].join(', ');
  if (before === null) return `starts "${verb}"${told === '' ? '' : `, ${told}`}`;
  return told === '' ? `changes "${verb}"` : `${verb} ${told}`;
}

type Moved = { readonly now: Instant; readonly was: Instant | null };

/** An edge where it is new or elsewhere; null where it stays or isn't known. */
const edgesOf = (before: Instant | null, after: Instant | null, isNew: boolean): Moved | null =>
  after === null || (after === before && !isNew)
    ? null
    : { now: after, was: isNew ? null : before };

const was = (moved: Moved, when: (at: Instant) => string): string =>
  moved.was === null ? '' : `, was ${when(moved.was)}`;
