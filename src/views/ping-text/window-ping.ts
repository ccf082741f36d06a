import type { BenchPing } from '../../tracker/bench/index.ts';
import {
  day,
  hour,
  minute,
  second,
  type Instant,
  type Milliseconds,
} from '../../tracker/time/index.ts';
import { stateAt, stretchAt, type Milestone, type Window } from '../../tracker/windows/index.ts';
import { callWords, minutesSpent, thenWords, timeLeftOf, whenInWords } from '../format/index.ts';
import type { ShopClock } from '../format/index.ts';
import { kindWords } from '../format/kind-words.ts';
import { isHarmless, losingEnd, nextOpening } from '../format/outlook.ts';

type AboutWindow = Extract<BenchPing, { about: 'window' }>;

/** What one window calls for: the verb, which comes first; when; and the sentences after it. */
export type Call = {
  readonly verb: string;
  /** Begins with the verb: `B on, by 16:42, 2 min left`. */
  readonly says: string;
  /** What is lost, the rescue, the gear. */
  readonly more: readonly string[];
};

/** The words of a window at the instant at which its ping goes out. */
export function callOf(
  { window, reason }: Pick<AboutWindow, 'window' | 'reason'>,
  now: Instant,
  shop: ShopClock,
): Call {
  const { call } = kindWords(window);
  const { gear, kind, milestone, verb } = window.rule;
  const stretch = stretchAt(window, now);
  const then = thenWords(window, now, shop);
  const callFor = (says: string, ...more: readonly (string | undefined)[]): Call => ({
    verb: verbIn(says),
    says,
    more: [...more, gear].flatMap((each) => each || []),
  });
  if (kind === 'timer')
    return callFor(`${verb}, timer up since ${whenInWords(stretch.begins, now, shop)}`);
  switch (stateAt(window, now)) {
    case 'before': {
      const opening = nextOpening(window, now);
      if (opening === null) return callFor(callWords(window, now, shop), then);
      const says = `${call} at ${whenInWords(opening, now, shop)}, in ${leftInWords(opening - now)}`;
      return callFor(says, then, thenWords(window, opening, shop));
    }
    case 'open':
    case 'closing': {
      const end = losingEnd(window, now);
      const left = end === null ? '' : `, ${leftInWords(end - now)} left`;
      return callFor(
        callWords(window, now, shop) + left,
        then,
        reason === 'opens' ? howToTry(window) : undefined,
      );
    }
    case 'barred':
      return callFor(callWords(window, now, shop), then);
    case 'late':
      if (isHarmless(stretch)) return callFor(callWords(window, now, shop));
      if (stretch.meaning === 'go after work') {
        if (then !== '' && then.length <= longestWork) return callFor(callWords(window, now, shop));
        const closed = `${milestone ?? call} closed ${whenInWords(stretch.begins, now, shop)}`;
        return callFor(closed, then);
      }
      return callFor(`${call}, late since ${whenInWords(stretch.begins, now, shop)}`, then);
    case 'done':
      return callFor(call);
  }
}

/** Extra work that is told in more than this gets a sentence of its own. */
const longestWork = 28;

/** The words up to the first one that tells a time. */
const verbIn = (says: string): string =>
  says.split(/,| (?:from|till|since|by|at|in|closed) /)[0] ?? says;

/** The nearest minute, as a ping goes out up to a second late; seconds where that would be none. */
function leftInWords(ms: Milliseconds): string {
  if (ms < 30 * second) return `${Math.ceil(ms / second)} s`;
  const minutes = Math.round(ms / minute);
  return minutes < 10 ? `${minutes} min` : timeLeftOf(minutes * minute);
}

/**
 * What the surface must stand before what waits for it is done: of the paper common practice, no source; the others as
 * ASTM D1640 names the stages, print-free, dry-hard and dry to handle (from memory).
 */
const trials: Partial<Record<Milestone, string>> = {
  scuff: 'paper must powder, not gum',
  'turn over': 'turn it if cloth pressed on leaves no print',
  'rub out': 'rub it out if a hard thumb leaves no mark',
  refit: 'refit if a thumb pressed and turned leaves no mark',
};

const howToTry = ({ rule }: Window): string | undefined =>
  rule.milestone === undefined ? undefined : trials[rule.milestone];

/** How long ago, in a sentence. */
export function ago(ms: Milliseconds): string {
  if (ms >= 2 * day) return `${Math.floor(ms / day)} days ago`;
  return ms < 10 * hour ? `${minutesSpent(ms)} ago` : `${Math.floor(ms / hour)} h ago`;
}
