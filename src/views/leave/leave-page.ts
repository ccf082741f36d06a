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
import { keeperPings, whoPings } from '../parts/who-pings.ts';
import type { ScrolledPage } from '../page.ts';
import { dueLines } from '../shut-up-shop/due-lines.ts';
import { leftInHand, spoiling } from '../shut-up-shop/overnight-lines.ts';
import type { View } from '../screen.ts';

/** Whether leaving is worth a word: a window is still to open or to close, or minutes are running. */
export const isSomethingRunning = (bench: Bench, now: Instant, sense: EdgeSense): boolean =>
  inHand(bench).length > 0 || duesTill(bench, now, null, sense).length > 0;

/** Whether a keeper could ping once the program is closed, and nobody has said yet whether it shall. */
export const asksForKeeper = ({ snapshot }: View): boolean =>
  snapshot.keeper === 'none' && snapshot.settings.keeper === 'ask';

/** Whether leaving needs no word: a keeper is to ping, and no minutes run. */
export const isLookedAfter = (view: View): boolean =>
  keeperPings(view) && inHand(view.snapshot.bench).length === 0;

/** What pings once the program is closed, or won't, worst first. */
export function leavePage(from: number, view: View): ScrolledPage {
  const { now, snapshot, columns } = view;
  const { bench, sense, shop } = snapshot;
  const dues = duesTill(bench, now, null, sense);
  return {
    head: heading(lineOf(`leave   ${day(now, shop)} ${clock(now, shop)}`, 'strong'), view),
    body: [
      ...(dues.length === 0 ? [] : [...quiet(whoPings(view), columns), ...dueLines(dues, view)]),
      ...spoiling(view),
      ...leftInHand(view),
      ...quiet('Windows go on by the clock; what was missed is told when it opens.', columns),
    ],
    foot: [
      ...(asksForKeeper(view)
        ? wrapWords(keeperQuestion, columns).map((line) => lineOf(line, 'strong'))
        : []),
      ...messageLines(view),
      ...keyHints(
        asksForKeeper(view)
          ? [
              'y: leave, keep pinging',
              'n: leave, never ask again',
              'Enter or q: leave',
              'Esc: stay',
            ]
          : ['Enter or q: leave', 'Esc: stay'],
        columns,
        3,
      ),
    ],
    from,
  };
}

const keeperQuestion = 'Shall a keeper go on pinging in the background? It ends when nothing runs.';

const quiet = (text: string, columns: number): readonly Line[] =>
  wrapWords(text, columns).map((line) => lineOf(line, 'quiet'));
