import { lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { page } from '../page.ts';
import type { Frame, View } from '../screen.ts';
import { heading } from './heading.ts';
import { keyHints } from './key-hints.ts';
import { messageLines } from './message-lines.ts';
import { cutOff, fromNextPage, pickPage, type PickItem } from './pick-page.ts';

export type ListPage = {
  readonly title: string;
  /** Lines between title and list. */
  readonly above?: readonly Line[];
  readonly items: readonly PickItem[];
  /** Index of the first item that is shown. */
  readonly from: number;
  /** Sentences under the list, each broken into lines. */
  readonly hints: readonly string[];
  readonly keys: readonly string[];
};

/** With fewer rows than this the list needs every one of them. */
const fewRows = 14;

/** A screen that asks for one of several. */
export function listPage(asked: ListPage, view: View): Frame {
  const { above, foot, room } = measured(asked, view);
  const pick = pickPage(asked.items, asked.from, above.length, room, view);
  // The list itself is drawn by who knows how to pick from it.
  const kept = Array.from({ length: pick.height }, () => lineOf(''));
  const hints = asked.hints.flatMap((hint) =>
    wrapWords(hint, view.columns).map((line) => lineOf(line, 'quiet')),
  );
  const told: string[] = [];
  const left = room - pick.height - 1 - hints.length - 1;
  for (const each of cutOff(asked.items, pick, view)) {
    const lines = wrapWords(each, view.columns);
    if (told.length + lines.length <= left) told.push(...lines);
  }
  if (told.length > 0) told.push('');
  const below = [...told.map((line) => lineOf(line)), ...hints];
  return { lines: page([...above, ...kept, lineOf(''), ...below], foot, view), pick };
}

/** Where the page after the shown one begins. */
export const turnedPage = (asked: ListPage, view: View): number =>
  fromNextPage(asked.items.length, asked.from, measured(asked, view).room);

/** What stands above the list and at the foot, and how many rows that leaves for it. */
function measured(
  asked: ListPage,
  view: View,
): { readonly above: readonly Line[]; readonly foot: readonly Line[]; readonly room: number } {
  const isLow = view.rows < fewRows;
  const [title = '', second] = wrapWords(asked.title, view.columns);
  const [first = lineOf(''), loud = lineOf('')] = heading(lineOf(title, 'strong'), view);
  const above = [
    first,
    ...(second === undefined || isLow ? [] : [lineOf(second, 'strong')]),
    ...(isLow && loud[0]?.text === '' ? [] : [loud]),
    ...(asked.above ?? []),
  ];
  const foot = [...messageLines(view), ...keyHints(asked.keys, view.columns, 3)];
  return { above, foot, room: view.rows - above.length - foot.length };
}
