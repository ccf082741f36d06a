import type { Instant } from '../../tracker/time/index.ts';
import {
  stretchAfter,
  stretchAt,
  type TimedStretch,
  type Window,
} from '../../tracker/windows/index.ts';

/** Whether coming into a stretch loses nothing. */
export const isHarmless = (stretch: TimedStretch): boolean =>
  stretch.meaning === 'go' || (stretch.meaning === 'late' && stretch.loss === 'costs nothing');

/** When the stretch in force ends with a loss; null where it has no end, or what follows costs nothing. */
export function losingEnd(window: Window, now: Instant): Instant | null {
  const next = stretchAfter(window, now);
  return next === null || isHarmless(next) ? null : next.begins;
}

/** When something can next be done on what is waiting, at worst after extra work; null where that is not known. */
export function nextOpening(window: Window, now: Instant): Instant | null {
  const opening = window.stretches.find(
    ({ begins, meaning }) => begins > now && (meaning === 'go' || meaning === 'go after work'),
  );
  return opening?.begins ?? stretchAt(window, now).ends;
}
