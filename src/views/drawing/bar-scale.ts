import { hour, type Instant } from '../../tracker/time/index.ts';

/** Cells of the time bar beside the words on a terminal of so many columns; 0 where the words must say it all. */
export function barWidth(columns: number): number {
  if (columns >= 120) return 61;
  if (columns >= 80) return 30;
  if (columns >= 40) return 20;
  return columns >= 30 ? 12 : 0;
}

/** A bar narrower than this has no room for both halves. */
export const narrowestBar = 5;

/**
 * The axis of a time bar: the now mark, `left` columns for the next hour, a break, `right` columns up to the far end.
 * Columns are counted without mark and break.
 */
export type BarScale = {
  readonly now: Instant;
  readonly hourEnds: Instant;
  readonly farEnd: Instant;
  readonly left: number;
  readonly right: number;
};

export function barScale(now: Instant, farEnd: Instant, width: number): BarScale {
  const left = Math.floor(width / 2);
  return { now, hourEnds: now + hour, farEnd, left, right: width - 2 - left };
}

/** The column in which an instant falls, for one from now on and before the far end. */
export function columnOf(instant: Instant, scale: BarScale): number {
  if (instant < scale.hourEnds) return columnWithin(instant, scale.now, scale.hourEnds, scale.left);
  return scale.left + columnWithin(instant, scale.hourEnds, scale.farEnd, scale.right);
}

/** The instant at the middle of a column. */
export function middleOf(column: number, scale: BarScale): Instant {
  if (column < scale.left)
    return scale.now + ((column + 0.5) / scale.left) * (scale.hourEnds - scale.now);
  return (
    scale.hourEnds + ((column - scale.left + 0.5) / scale.right) * (scale.farEnd - scale.hourEnds)
  );
}

/** The cell of the whole bar in which a column is drawn: after the now mark, and right of the break past the hour. */
export const cellOf = (column: number, scale: BarScale): number =>
  column + (column < scale.left ? 1 : 2);

const columnWithin = (instant: Instant, from: Instant, to: Instant, columns: number): number =>
  Math.min(columns - 1, Math.floor(((instant - from) / (to - from)) * columns));
