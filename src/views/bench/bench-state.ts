import type { Instant } from '../../tracker/time/index.ts';
import type { RefusedFor } from '../parts/refused-for.ts';
import { freshGuard, type Guard } from '../keys/guard.ts';

/** What the bench screen itself keeps; all else is in the snapshot. */
export type BenchState = {
  readonly is: 'bench';
  /** Key of the selected row; null takes the first. */
  readonly selected: string | null;
  /** The selected part, where the piece has parts; null is the whole piece. */
  readonly part: string | null;
  /** What was selected before the last digit, for a second digit that says it was a glove. */
  readonly before: string | null;
  readonly guard: Guard;
  /** When a key last counted: the far view comes after a time without one. */
  readonly touchedAt: Instant;
  /** When a screen on top of the bench closed. */
  readonly returnedAt: Instant | null;
  /** The numeric pad's list is open, and which page of it. */
  readonly list: 'closed' | 'first' | 'more';
  /** How many of the notices a key has answered. */
  readonly noticesSeen: number;
  /** What is marked while the bench is empty. */
  readonly offer?: 'add' | 'demo';
  /** A step waits for its trial; the same key again asks why without. */
  readonly refused?: RefusedFor;
};

export const benchStart = (now: Instant): BenchState => ({
  is: 'bench',
  selected: null,
  part: null,
  before: null,
  guard: freshGuard,
  touchedAt: now,
  returnedAt: null,
  list: 'closed',
  noticesSeen: 0,
});
