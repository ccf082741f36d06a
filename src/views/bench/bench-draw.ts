import { lineOf, plain, segment, spaces, timeAxis, type Line } from '../drawing/index.ts';
import { noonAfterNight } from '../format/index.ts';
import { emptyBench } from '../first-run/empty-bench.ts';
import { drawFar } from '../far/far-draw.ts';
import { spokenBench } from '../plain/index.ts';
import { drawList } from './pad-list.ts';
import type { Frame, View } from '../screen.ts';
import { drawRow, drawSecond, type RowInput } from './bench-row.ts';
import { benchRows, isFar } from './bench-rows.ts';
import type { BenchState } from './bench-state.ts';
import { extraLines, thirdLine } from './extra.ts';
import { footLines } from './foot.ts';
import { callLines, dateLine } from './head.ts';
import { benchLayout } from './layout.ts';
import { rowWords } from './row-words.ts';

/** The bench at one moment. */
export function drawBench(state: BenchState, view: View): Frame {
  const rows = benchRows(state, view);
  if (rows.all.length === 0 && state.list === 'closed') return emptyBench(state, view);
  if (state.list !== 'closed') return drawList(state, rows, view);
  // What is said of the selected piece and of the last key stands in the foot, on the bench as in the far view.
  const foot = footLines(state, rows, view);
  const spoken = (): string =>
    [spokenBench({ ...view.snapshot, now: view.now }), ...foot.map(plain)].join('\n');
  if (isFar(state, view)) return { ...drawFar(state, rows, view), spoken };
  const { shop } = view.snapshot;
  const layout = benchLayout(view.columns, shop);
  const farEnd = noonAfterNight(view.now, shop.zone);
  const head = callLines(rows, view);
  const inputs: readonly RowInput[] = rows.rows.map((standing) => ({
    standing,
    words: rowWords(standing, view),
    selected: standing.key === rows.selected?.key,
    layout,
    farEnd,
    view,
  }));
  const axis: Line = [
    segment(spaces(layout.barAt)),
    ...timeAxis({ now: view.now, farEnd, width: layout.bar, shop }),
  ];
  const budget = view.rows - 4 - foot.length;
  const body = fitBody(inputs, axis, budget, view, rows.selected?.key ?? null);
  const extra = extraLines(view, budget - body.length);
  const gap = Array.from({ length: Math.max(0, budget - body.length - extra.length) }, () =>
    lineOf(''),
  );
  return {
    lines: [dateLine(view), ...head.lines, ...body, ...gap, ...extra, ...foot],
    spoken,
    ticking: head.ticking || inputs.some(({ words }) => words.ticking),
  };
}

/**
 * The axis and as many rows as fit. If room lacks, second lines go first, from the bottom; then the axis; then rows
 * scroll so that the selected one shows, and what spoils stays at the top.
 */
function fitBody(
  inputs: readonly RowInput[],
  axis: Line,
  budget: number,
  view: View,
  selected: string | null,
): readonly Line[] {
  const firsts = inputs.map((input) => drawRow(input));
  const seconds = view.columns < 80 ? [] : inputs.map((input) => drawSecond(input));
  const height = firsts.reduce((sum, lines) => sum + lines.length, 0);
  if (height > budget) return scrolled(inputs, firsts, budget, selected);
  const withAxis = height + 1 <= budget;
  const room = Math.max(0, budget - height - (withAxis ? 1 : 0));
  const thirds = view.columns >= 120 ? inputs.map((input) => thirdLine(input)) : [];
  const thirdsFit = thirds.length > 0 && room >= seconds.length + thirds.length + 1;
  return [
    ...(withAxis ? [axis] : []),
    ...firsts.flatMap((lines, index) => [
      ...lines,
      ...(index < Math.min(room, seconds.length) ? [seconds[index] ?? lineOf('')] : []),
      ...(thirdsFit ? [thirds[index] ?? lineOf('')] : []),
    ]),
  ];
}

function scrolled(
  inputs: readonly RowInput[],
  firsts: readonly (readonly Line[])[],
  budget: number,
  selected: string | null,
): readonly Line[] {
  const each = firsts[0]?.length ?? 1;
  const shown = Math.max(1, Math.floor((budget - 1) / each));
  const pinned = Math.min(
    shown - 1,
    inputs.filter(({ standing }) => standing.rank === 'spoils').length,
  );
  const rest = inputs.slice(pinned);
  const at = Math.max(
    0,
    rest.findIndex(({ standing }) => standing.key === selected),
  );
  const from = Math.min(
    Math.max(0, at - (shown - pinned) + 1),
    Math.max(0, rest.length - (shown - pinned)),
  );
  const last = pinned + from + (shown - pinned);
  const hidden = inputs.length - shown;
  const more = `${hidden} more: ${from > 0 ? 'up' : ''}${from > 0 && last < inputs.length ? ', ' : ''}${last < inputs.length ? 'down' : ''}`;
  return [
    ...firsts.slice(0, pinned).flat(),
    ...firsts.slice(pinned + from, last).flat(),
    lineOf(`     ${more}`, 'quiet'),
  ];
}
