import { lineOf, type Line } from './drawing/index.ts';
import type { Press } from './keys/press.ts';
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

/** A body that may be longer than the screen: `head` and `foot` stay where they are, the body moves between them. */
export type ScrolledPage = {
  readonly head: readonly Line[];
  readonly body: readonly Line[];
  readonly foot: readonly Line[];
  /** The line of the body, from 0, at which the shown part begins. */
  readonly from: number;
};

export function scrolledPage(asked: ScrolledPage, view: Pick<View, 'rows'>): readonly Line[] {
  const { head, body, foot } = asked;
  const size = bodyRows(asked, view);
  if (size >= body.length) return page([...head, ...body], foot, view);
  const from = shownFrom(asked.from, size, body.length);
  const after = body.length - from - size;
  const told = [
    ...(after > 0 ? [`down: ${after} more`] : []),
    ...(from > 0 ? [`up: ${from} more`] : []),
  ];
  const shown = body.slice(from, from + size);
  return page([...head, ...shown, lineOf(told.join('   '), 'quiet')], foot, view);
}

/** Where the shown part begins after a key; null for a key that doesn't move it. */
export function scrolledBy(
  { name }: Press,
  asked: ScrolledPage,
  view: Pick<View, 'rows'>,
): number | null {
  const size = bodyRows(asked, view);
  const from = shownFrom(asked.from, size, asked.body.length);
  const to = (next: number): number => shownFrom(next, size, asked.body.length);
  switch (name) {
    case 'down':
      return to(from + 1);
    case 'up':
      return to(from - 1);
    case 'page down':
    case 'space':
      return to(from + size);
    case 'page up':
      return to(from - size);
    case 'home':
      return 0;
    case 'end':
      return to(asked.body.length);
    default:
      return null;
  }
}

/** Rows that the body has; where it doesn't fit one of them says how much more there is. */
function bodyRows({ head, body, foot }: ScrolledPage, { rows }: Pick<View, 'rows'>): number {
  const room = Math.max(0, rows - head.length - foot.length);
  return body.length <= room ? body.length : Math.max(0, room - 1);
}

/** The part of a long list that is shown: `size` rows from `from`, moved so that the list's end is not passed. */
const shownFrom = (from: number, size: number, length: number): number =>
  Math.max(0, Math.min(from, length - size));
