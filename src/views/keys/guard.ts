import type { Instant, Milliseconds } from '../../tracker/time/index.ts';

/** What the guard remembers between presses. */
export type Guard = {
  readonly lastArrival: Instant | null;
  readonly lastTaken: { readonly name: string; readonly at: Instant } | null;
  /** A key is being held down: nothing counts until there is silence. */
  readonly held: boolean;
  readonly listClosedAt: Instant | null;
};

export const freshGuard: Guard = {
  lastArrival: null,
  lastTaken: null,
  held: false,
  listClosedAt: null,
};

/** The same deed twice within this time is a bounce. */
const bounce: Milliseconds = 1000;
/** Two arrivals closer than this are a held key. A keyboard repeats every 30 to 50 ms once it has begun to. */
const heldGap: Milliseconds = 120;
/** Held keys end with this much silence. */
const silence: Milliseconds = 300;
/** Two digits closer than this are a glove on two keys. */
export const twoDigits: Milliseconds = 80;

const guarded = new Set(['enter', 'space', '+', 'd']);
const isDigit = (name: string): boolean => /^[1-9]$/.test(name);

export type Verdict = {
  readonly guard: Guard;
  readonly take: boolean;
  /** The second of two digits that came together: the selection that the first made is to be undone. */
  readonly revert: boolean;
};

/** Whether a press on the bench counts, from its key and its arrival alone. Whatever key finishes a step comes in as `d`. */
export function judge(guard: Guard, name: string, at: Instant): Verdict {
  const gap = guard.lastArrival === null ? Number.POSITIVE_INFINITY : at - guard.lastArrival;
  const arrived = { ...guard, lastArrival: at };
  const drop = (held: boolean, revert = false): Verdict => ({
    guard: { ...arrived, held },
    take: false,
    revert,
  });
  // A clock that was set back says nothing about the gap; the press counts.
  if (gap >= 0 && gap < (guard.held ? silence : heldGap)) {
    const revert =
      !guard.held &&
      gap < twoDigits &&
      isDigit(name) &&
      guard.lastTaken !== null &&
      isDigit(guard.lastTaken.name);
    return drop(true, revert && guard.lastTaken?.name !== name);
  }
  const last = guard.lastTaken;
  const sinceTaken = last === null ? Number.POSITIVE_INFINITY : at - last.at;
  if (guarded.has(name) && last?.name === name && sinceTaken >= 0 && sinceTaken < bounce)
    return drop(false);
  const sinceList =
    guard.listClosedAt === null ? Number.POSITIVE_INFINITY : at - guard.listClosedAt;
  if ((guarded.has(name) || isDigit(name)) && sinceList >= 0 && sinceList < bounce)
    return drop(false);
  return { guard: { ...arrived, held: false, lastTaken: { name, at } }, take: true, revert: false };
}

export const listClosed = (guard: Guard, at: Instant): Guard => ({ ...guard, listClosedAt: at });
