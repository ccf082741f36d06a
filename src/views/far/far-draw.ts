import { labelOf, sessionHolding } from '../../tracker/bench/index.ts';
import { minute } from '../../tracker/time/index.ts';
import { fitLine, lineOf, type Line } from '../drawing/index.ts';
import { minutesSpent } from '../format/index.ts';
import type { BenchRows } from '../bench/bench-rows.ts';
import type { BenchState } from '../bench/bench-state.ts';
import { refusalLine } from '../bench/foot.ts';
import { dateLine } from '../bench/date-line.ts';
import { loudPings } from '../bench/head.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { page } from '../page.ts';
import { silenceLine } from '../parts/silence-line.ts';
import { sleepWords } from '../parts/sleep-words.ts';
import type { Frame, View } from '../screen.ts';
import { calmBlock, secondBlock, urgentBlock } from './far-block.ts';
import { whatCalls, type FarCall } from './what-calls.ts';

/** The bench for somebody across the shop: what is lost first, several rows tall; in the calm the next thing alone. */
export function drawFar(state: Pick<BenchState, 'part'>, rows: BenchRows, view: View): Frame {
  const { calls, isCalm } = whatCalls(rows.all, view);
  const [first, second] = calls;
  const foot = footOf(state, rows, view);
  const head: readonly Line[] = [
    dateLine(view, rows.all),
    ...(view.rows < 14 ? [] : [lineOf('')]),
    ...toldLoud(calls, view),
  ];
  const room = view.rows - head.length - foot.length;
  if (first === undefined)
    return { lines: page([...head, ...nothing(rows)], foot, view), ticking: false };
  if (isCalm)
    return { lines: page([...head, ...calmBlock(first, view, room)], foot, view), ticking: false };
  const large = urgentBlock(first, view, room);
  const left = room - large.length - 1;
  const under =
    second === undefined || left < 1 ? [] : [lineOf(''), ...secondBlock(second, view, left)];
  return {
    lines: page([...head, ...large, ...under], foot, view),
    ticking: calls.some(({ at }) => at !== null && at > view.now && at - view.now <= 10 * minute),
  };
}

const nothing = ({ rows }: BenchRows): readonly Line[] => {
  const isWaiting = rows.some(({ rank }) => rank === 'waits');
  return [lineOf(isWaiting ? '   No window is running.' : '   Nothing needs hands.', 'strong')];
};

/** On which piece keys act, and what the next one does. */
function footOf(
  { part }: Pick<BenchState, 'part'>,
  { selected }: BenchRows,
  view: View,
): readonly Line[] {
  const { now, message, columns, snapshot } = view;
  const { obstacle, bench } = snapshot;
  if (obstacle !== null)
    return [
      ...wrapWords(obstacle.says, columns).map(refusalLine),
      ...wrapWords(obstacle.todo, columns - 3).map((todo) => lineOf(`   ${todo}`, 'refusal')),
    ];
  const piece = selected?.piece ?? null;
  const held = piece === null ? null : sessionHolding(bench, piece.id);
  const named = piece?.parts.find(({ id }) => id === part)?.name;
  const on =
    piece === null
      ? `keys act on ${selected === null ? 'nothing' : labelOf(selected)}`
      : [
          `keys act on [${piece.number}] ${piece.name}`,
          ...(named === undefined ? [] : [named]),
          ...(held === null ? [] : [`in hand ${minutesSpent(now - held.start)}`]),
        ].join(', ');
  const loud = loudPings(view)[0];
  if (loud !== undefined) return [lineOf(on, 'quiet'), silenceLine(loud, view)];
  const hint =
    columns < 80
      ? '1-9 piece  other keys: the bench'
      : '1-9 another piece.  Any other key acts and brings the bench back.';
  const told =
    message === null
      ? lineOf(hint, 'quiet')
      : message.refused
        ? refusalLine(message.text)
        : lineOf(message.text, 'strong');
  const sleeps = sleepWords(snapshot.awake, columns < 80 ? 'a few words' : 'a sentence');
  const sleepy = sleeps === null ? [] : [lineOf(sleeps, 'quiet')];
  return [...sleepy, lineOf(on, 'quiet'), told];
}

/** A loud ping whose window is not among what is drawn is told in its own words. */
function toldLoud(calls: readonly FarCall[], view: View): readonly Line[] {
  const loud = loudPings(view)[0];
  if (loud === undefined || calls.some(({ isLoud }) => isLoud)) return [];
  return wrapWords(`!! ${loud.text}`, view.columns)
    .slice(0, 3)
    .map((line) => fitLine(lineOf(line, 'loud'), view.columns, view.theme.glyphs, 'loud'));
}
