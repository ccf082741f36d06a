import { inHand, type Bench } from '../../tracker/bench/index.ts';
import { duesTill } from '../../tracker/overnight/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import type { EdgeSense } from '../../tracker/windows/index.ts';
import { lineOf, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { clock, day } from '../format/index.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { ScrolledPage } from '../page.ts';
import { dueLines } from '../shut-up-shop/due-lines.ts';
import { leftInHand, spoiling } from '../shut-up-shop/overnight-lines.ts';
import type { View } from '../screen.ts';

/** Whether leaving is worth a word: a window is still to open or to close, or minutes are running. */
export const isSomethingRunning = (bench: Bench, now: Instant, sense: EdgeSense): boolean =>
  inHand(bench).length > 0 || duesTill(bench, now, null, sense).length > 0;

/** What won't ping once the program is closed, worst first. */
export function leavePage(from: number, view: View): ScrolledPage {
  const { now, snapshot, columns } = view;
  const { bench, sense, shop } = snapshot;
  const dues = duesTill(bench, now, null, sense);
  return {
    head: heading(lineOf(`leave   ${day(now, shop)} ${clock(now, shop)}`, 'strong'), view),
    body: [
      ...(dues.length === 0
        ? []
        : [
            ...quiet('none of these pings while recoat is closed', columns),
            ...dueLines(dues, view),
          ]),
      ...spoiling(view),
      ...leftInHand(view),
      ...quiet('Windows go on by the clock; what was missed is told when it opens.', columns),
    ],
    foot: [...messageLines(view), ...keyHints(['Enter or q: leave', 'Esc: stay'], columns, 3)],
    from,
  };
}

const quiet = (text: string, columns: number): readonly Line[] =>
  wrapWords(text, columns).map((line) => lineOf(line, 'quiet'));
