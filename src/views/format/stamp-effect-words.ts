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
  const opens = opensAt(after);
  const told = [
    ...(opens === null || opens <= now
      ? []
      : edgeWords('from', opens, before === null ? null : opensAt(before), when)),
    ...edgeWords(
      'till',
      losingEnd(after, now),
      before === null ? null : losingEnd(before, now),
      when,
    ),
  ].join(', ');
  if (before === null) return `starts "${verb}"${told === '' ? '' : `, ${told}`}`;
  return told === '' ? `changes "${verb}"` : `${verb} ${told}`;
}

/** `till 14:00, was 13:00`: an edge that is new or is told otherwise than before; nothing where it stays or isn't known. */
function edgeWords(
  which: string,
  now: Instant | null,
  before: Instant | null,
  when: (at: Instant) => string,
): readonly string[] {
  if (now === null) return [];
  if (before === null) return [`${which} ${when(now)}`];
  return when(now) === when(before) ? [] : [`${which} ${when(now)}, was ${when(before)}`];
}
