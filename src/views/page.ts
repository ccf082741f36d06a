import { lineOf, type Line } from './drawing/index.ts';
import type { View } from './screen.ts';

/** A whole screen: its foot stands on the last rows, with empty rows above it; of a body that is too long the end is cut off. */
export function page(
  body: readonly Line[],
  foot: readonly Line[],
  { rows }: Pick<View, 'rows'>,
): readonly Line[] {
  const room = Math.max(0, rows - foot.length);
  const gap = Array.from({ length: Math.max(0, room - body.length) }, () => lineOf(''));
  return [...body.slice(0, room), ...gap, ...foot];
}

/** The part of a long list that is shown: `size` rows from `from`, moved so that the list's end is not passed. */
export const shownFrom = (from: number, size: number, length: number): number =>
  Math.max(0, Math.min(from, length - size));
