import { begunInHand, labelOf, type Standing } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import {
  clock,
  day,
  dayWords,
  lightUseWords,
  nearness,
  thenWords,
  windowWords,
} from '../format/index.ts';
import type { PlainInput } from './plain-input.ts';

/** One row in words: who, what it is at, how it stands, and what comes then. */
export type StandingWords = {
  readonly number: string;
  readonly name: string;
  /** The step that the words are about, with its part. */
  readonly step: string;
  /** `try it till`: completed by `when`. */
  readonly state: string;
  readonly when: string;
  /** What the words count to or from; null where they don't. */
  readonly counts: { readonly at: Instant; readonly up: boolean } | null;
  readonly then: string;
};

export function standingWords(standing: Standing, input: PlainInput): StandingWords {
  const { piece, rank, window, session, step } = standing;
  const { now, shop } = input;
  const base = {
    number: piece === null || piece.number === null ? '' : String(piece.number),
    name: piece?.name ?? labelOf(standing),
    step: stepWords(standing),
    when: '',
    counts: null,
    then: '',
  };
  if (rank === 'in hand' && session !== null && begunInHand(standing) === null) {
    const { start } = session;
    const then = window === null ? '' : thenWords(window, now, shop);
    return {
      ...base,
      state: 'in hand since',
      when: when(start, input),
      counts: { at: start, up: true },
      then,
    };
  }
  if (window !== null) {
    const { words, at, counts } = windowWords(window, now, shop);
    return {
      ...base,
      state: words,
      when: at === null ? '' : when(at, input),
      counts: at === null ? null : { at, up: counts === 'up' },
      // That nothing is lost goes without saying of what only cures.
      then: rank === 'curing' ? lightUseWords(standing, now, shop) : thenWords(window, now, shop),
    };
  }
  if (rank === 'hold' && piece !== null && piece.hold !== null) {
    const { reason, askAgain } = piece.hold;
    const then = askAgain === null ? '' : `ask ${dayWords(askAgain)}`;
    return { ...base, step: '', state: `hold: ${reason}`, then };
  }
  return { ...base, state: step === null ? 'every step done' : 'waits for hands' };
}

/** The step in hand, else the one whose window decides, else the next. */
function stepWords({ piece, part, rank, session, step, window }: Standing): string {
  if (piece === null) return '';
  const worked =
    rank === 'in hand'
      ? session?.targets.find((target) => target.piece === piece.id)?.step
      : window?.subject.stepId;
  const about = piece.steps.find(({ id }) => id === worked) ?? step;
  const named = piece.parts.find(({ id }) => id === (window?.subject.partId ?? part))?.name;
  if (about === null) return named ?? '';
  return named === undefined ? about.name : `${named}: ${about.name}`;
}

/** `18:30` today, `Wed 25 Nov 08:55` this week, `Mon 14 Dec` further off. */
function when(at: Instant, { now, shop }: PlainInput): string {
  switch (nearness(at, now, shop)) {
    case 'today':
      return clock(at, shop);
    case 'this week':
      return `${day(at, shop)} ${clock(at, shop)}`;
    case 'further':
      return day(at, shop);
  }
}
