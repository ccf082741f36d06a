import type { Instant } from '../../tracker/time/index.ts';
import {
  stateAt,
  stretchAfter,
  stretchAt,
  type Window,
  type WindowState,
} from '../../tracker/windows/index.ts';
import type { Role } from '../drawing/line.ts';
import { clock, type ShopClock } from './clock.ts';
import { kindWords } from './kind-words.ts';
import { timeLeft, timeSince } from './lengths.ts';
import { isHarmless, losingEnd, nextOpening } from './outlook.ts';

/** A window as its row says it: "try it till", "18:30", "4 h 01". */
export type WindowWords = {
  readonly state: WindowState;
  /** Completed by the clock, in at most 16 cells. Empty when the window is over. */
  readonly words: string;
  /** What the clock shows; null when the window is over. */
  readonly at: Instant | null;
  readonly clock: string;
  /** Time left or, after "since", time gone; in at most six cells. */
  readonly left: string;
  readonly counts: 'down' | 'up' | 'nothing';
  /** For the state words, clock, time left and bar; never for the name. */
  readonly role: Role;
};

export function windowWords(window: Window, now: Instant, shop: ShopClock): WindowWords {
  const state = stateAt(window, now);
  const role = roleOf(window, state, now);
  if (state === 'done')
    return { state, words: '', at: null, clock: '', left: '', counts: 'nothing', role };
  const { words, at, counts } = phraseOf(window, state, now);
  const left = counts === 'up' ? timeSince(at, now, shop) : timeLeft(at, now, shop);
  return { state, words, at, clock: clock(at, shop), left, counts, role };
}

type Phrase = { readonly words: string; readonly at: Instant; readonly counts: 'down' | 'up' };

const till = (words: string, at: Instant): Phrase => ({ words, at, counts: 'down' });
const since = (words: string, at: Instant): Phrase => ({ words, at, counts: 'up' });

function phraseOf(window: Window, state: Exclude<WindowState, 'done'>, now: Instant): Phrase {
  const say = kindWords(window);
  const stretch = stretchAt(window, now);
  switch (state) {
    case 'before': {
      const opening = nextOpening(window, now);
      return opening === null
        ? since(say.waitingSince, window.begunAt)
        : till(say.waiting, opening);
    }
    case 'open':
    case 'closing': {
      const end = losingEnd(window, now);
      return end === null ? since(say.openSince, stretch.begins) : till(say.openTill, end);
    }
    case 'barred':
      return stretch.ends === null
        ? since('keep off since', stretch.begins)
        : till('keep off till', stretch.ends);
    case 'late':
      if (isHarmless(stretch)) return since(say.openSince, stretch.begins);
      return since(
        stretch.loss === 'spoils' ? say.lateSince : say.afterWork(stretch.says),
        stretch.begins,
      );
  }
}

function roleOf(window: Window, state: WindowState, now: Instant): Role {
  const stretch = stretchAt(window, now);
  switch (state) {
    case 'before':
    case 'done':
      return 'quiet';
    case 'open':
      return 'go';
    case 'closing':
      return stretchAfter(window, now)?.loss === 'spoils' ? 'spoils' : 'work lost';
    case 'barred':
      return 'keep off';
    case 'late':
      if (isHarmless(stretch)) return 'go';
      return stretch.loss === 'spoils' ? 'spoils' : 'work lost';
  }
}
