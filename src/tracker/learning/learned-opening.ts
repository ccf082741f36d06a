import { minute, type Milliseconds } from '../time/index.ts';
import type { OwnTime } from '../windows/model.ts';
import { foreseenDrying, type LearnedDrying, type TriedCoat } from './drying-times.ts';

/** So many coats must have been found ready before a window opens sooner than its label says. */
export const enoughCoats = 5;

/** And so many tried before it opens later, one of them "not yet" when the label's time had run. */
const enoughToWait = 3;

/** A learned opening is one by which so many coats are there: 4 times in 5. */
export const openingChance = 0.8;

/** However soon coats were found ready, no opening comes sooner than half the label's time (common practice, no source). */
const soonest = 0.5;

/**
 * When a window opens after coats that were tried, in the label's own air; null where the label's figure stands.
 *
 * @param label the label's figure
 * @param coats what `learned` was learned from
 * @param maySooner whether checks may bring this opening forward: scuffing and recoating of waterborne, evaporative and
 *   oxidative coats. Later is always allowed: it costs a wait, and a check ends it.
 */
export function learnedOpening(
  label: Milliseconds,
  maySooner: boolean,
  coats: readonly TriedCoat[],
  learned: LearnedDrying,
): OwnTime | null {
  const isSlow = coats.some(({ notYetAt }) => notYetAt * minute >= label);
  const mayLater = isSlow && learned.coats >= enoughToWait;
  const mayEarlier = maySooner && learned.found >= enoughCoats;
  if (!mayLater && !mayEarlier) return null;
  const foreseen = foreseenDrying(learned, label / minute, openingChance);
  const ms = Math.round(Math.max(foreseen, (soonest * label) / minute)) * minute;
  const moves = ms > label ? mayLater : ms < label && mayEarlier;
  return moves ? { ms, coats: learned.coats } : null;
}
