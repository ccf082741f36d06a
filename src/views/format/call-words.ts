import type { Instant } from '../../tracker/time/index.ts';
import {
  stateAt,
  stretchAfter,
  stretchAt,
  type TimedStretch,
  type Window,
} from '../../tracker/windows/index.ts';
import { whenInWords, type ShopClock } from './clock.ts';
import { kindWords } from './kind-words.ts';
import { isHarmless, losingEnd, nextOpening } from './outlook.ts';

/** As the `next` line, a ping or the day sheet calls it, after number and name: `try it, till 18:30`, `B on, by 16:42`. */
export function callWords(window: Window, now: Instant, shop: ShopClock): string {
  const { call, callTill } = kindWords(window);
  const stretch = stretchAt(window, now);
  const when = (at: Instant): string => whenInWords(at, now, shop);
  switch (stateAt(window, now)) {
    case 'before': {
      const opening = nextOpening(window, now);
      return opening === null ? `${call} later` : `${call} from ${when(opening)}`;
    }
    case 'open':
    case 'closing': {
      const end = losingEnd(window, now);
      return end === null ? `${call} since ${when(stretch.begins)}` : callTill(when(end));
    }
    case 'barred':
      return stretch.ends === null ? 'keep off' : `keep off till ${when(stretch.ends)}`;
    case 'late':
      if (isHarmless(stretch)) return `${call} since ${when(stretch.begins)}`;
      if (stretch.says === undefined) return `${call}, late since ${when(stretch.begins)}`;
      return stretch.loss === 'spoils'
        ? lateWords(stretch.says)
        : `${stretch.says}, closed ${when(stretch.begins)}`;
    case 'done':
      return '';
  }
}

/** What is lost or done about it; where that has a colon of its own, no second one. */
const lateWords = (says: string): string =>
  says.includes(':') ? `late, ${says}` : `late: ${says}`;

/** The second line of a row: what comes after, and what it costs. Empty where that is not known. */
export function thenWords(window: Window, now: Instant, shop: ShopClock): string {
  const stretch = stretchAt(window, now);
  const next = stretchAfter(window, now);
  switch (stateAt(window, now)) {
    case 'before':
      return next === null ? '' : afterWaiting(window, next, now, shop);
    case 'open':
    case 'closing':
      if (next !== null)
        return isHarmless(next) ? 'nothing lost by waiting' : costOf(next, now, shop);
      return endsWell(window) ? 'nothing lost by waiting' : '';
    case 'barred':
    case 'late':
      return stretch.says ?? '';
    case 'done':
      return '';
  }
}

function afterWaiting(window: Window, next: TimedStretch, now: Instant, shop: ShopClock): string {
  switch (next.meaning) {
    case 'go': {
      const end = losingEnd(window, next.begins);
      if (end !== null) return `open to ${whenInWords(end, now, shop)}`;
      return endsWell(window) ? 'nothing lost after' : '';
    }
    case 'go after work':
      return `${noOpenTime(window)}from ${whenInWords(next.begins, now, shop)} ${next.says ?? 'after more work'}`;
    case 'keep off':
    case 'late':
      return (lostItsGo(window, next) ? noOpenTime(window) : '') + costOf(next, now, shop);
    case 'wait':
      return costOf(next, now, shop);
  }
}

/** An opening that has come to lie past its closing. A finding of "not yet" pushes it as cold air does. */
const noOpenTime = ({ heldBackAt }: Window): string =>
  heldBackAt === undefined ? 'no open time: warm the shop; ' : 'no open time left; ';

/** Whether a "go" that its rule has before a stretch has lost all its time. */
function lostItsGo({ rule }: Window, next: TimedStretch): boolean {
  const place = rule.stretches.findIndex((stretch) => stretch.from === next.from);
  return rule.stretches.slice(0, place).some(({ meaning }) => meaning === 'go');
}

/** Whether the rule knows no loss at its end. An end that hangs on a stamp still to come is no promise of that. */
const endsWell = (window: Window): boolean => window.rule.stretches.at(-1)?.meaning === 'go';

/** What a stretch to come costs. */
function costOf(next: TimedStretch, now: Instant, shop: ShopClock): string {
  const when = whenInWords(next.begins, now, shop);
  switch (next.meaning) {
    case 'keep off':
      return next.ends === null
        ? `keep off after ${when}`
        : `then keep off till ${whenInWords(next.ends, now, shop)}`;
    case 'late':
      return next.says === undefined ? `late after ${when}` : lateWords(next.says);
    case 'wait':
    case 'go':
    case 'go after work':
      return next.says === undefined ? `closes ${when}` : `after ${when} ${next.says}`;
  }
}
