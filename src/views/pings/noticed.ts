import { lineOf, type Line } from '../drawing/index.ts';
import { wrapWhole } from '../drawing/wrap.ts';
import type { View } from '../screen.ts';

const indent = 2;

/** What this run noticed, in full: the bench has two rows for it, and only till the next key. */
export function noticedLines({ columns, snapshot: { notices } }: View): readonly Line[] {
  if (notices.length === 0) return [];
  return [
    lineOf(''),
    lineOf('noticed, the last one first', 'quiet'),
    ...notices.toReversed().flatMap((notice) => noticeLines(notice, columns)),
  ];
}

/** The first row stands out to the left, so that one notice can be told from the next. */
const noticeLines = (notice: string, columns: number): readonly Line[] =>
  wrapWhole(notice, columns - 2 * indent).map((text, index) =>
    lineOf(' '.repeat(index === 0 ? indent : 2 * indent) + text),
  );
