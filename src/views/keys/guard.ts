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
/** A digit that chooses a piece. */
export const isDigit = (name: string): boolean => /^[1-9]$/.test(name);

export type Verdict = {
  readonly guard: Guard;
  readonly take: boolean;
  /** The second of two digits that came together: the selection that the first made is to be undone. */
  readonly revert: boolean;
};

/** Whether a press on the bench counts, from its key and its arrival alone. Whatever key finishes a step comes in as `d`. */
export function judge(guard: Guard, name: string, at: Instant): Verdict {
  const arrived = { ...guard, lastArrival: at };
  const drop = (held: boolean, revert = false): Verdict => ({
    guard: { ...arrived, held },
    take: false,
    revert,
  });
  const { held, lastArrival, lastTaken, listClosedAt } = guard;
  if (isWithin(held ? silence : heldGap, lastArrival, at)) {
    const isTogether = !held && isWithin(twoDigits, lastArrival, at);
    return drop(true, isTogether && lastTaken !== null && areTwoDigits(lastTaken.name, name));
  }
  const isGuarded = guarded.has(name);
  if (isGuarded && lastTaken?.name === name && isWithin(bounce, lastTaken.at, at))
    return drop(false);
  if ((isGuarded || isDigit(name)) && isWithin(bounce, listClosedAt, at)) return drop(false);
  return { guard: { ...arrived, held: false, lastTaken: { name, at } }, take: true, revert: false };
}

/** Whether something was less than a length of time ago. A clock that was set back says nothing of it: then it wasn't. */
const isWithin = (length: Milliseconds, since: Instant | null, now: Instant): boolean =>
  since !== null && now >= since && now - since < length;

const areTwoDigits = (first: string, second: string): boolean =>
  isDigit(first) && isDigit(second) && first !== second;

export const listClosed = (guard: Guard, at: Instant): Guard => ({ ...guard, listClosedAt: at });
