import type { Standing } from '../../tracker/bench/index.ts';
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
import { cautionRows } from './caution-rows.ts';
import { extraLines, thirdLine } from './extra.ts';
import { footLines } from './foot.ts';
import { dateLine } from './date-line.ts';
import { callLines } from './head.ts';
import { benchLayout, type BenchLayout } from './layout.ts';
import { matchRows } from './match-rows.ts';
import { rowWords } from './row-words.ts';

/** The bench at one moment. */
export function drawBench(state: BenchState, view: View): Frame {
  const rows = benchRows(state, view);
  if (rows.all.length === 0 && state.list === 'closed') return emptyBench(state, view);
  if (state.list !== 'closed') return drawList(state, rows, view);
  // What is said of the selected piece and of the last key stands in the foot, on the bench as in the far view.
  const foot = footLines(state, rows, view);
  const spoken = (): string =>
    [
      spokenBench({ ...view.snapshot, now: view.now }),
      ...cautionRows(rows, view, view.rows).lines().map(plain),
      ...matchRows(rows, view, view.rows).map(plain),
      ...foot.map(plain),
    ].join('\n');
  if (isFar(state, view)) return { ...drawFar(state, rows, view), spoken };
  const { shop } = view.snapshot;
  const layout = benchLayout(view.columns, shop);
  const farEnd = noonAfterNight(view.now, shop.zone);
  const head = callLines(rows, view);
  const inputOf = (standing: Standing): RowInput => ({
    standing,
    words: rowWords(standing, view),
    selected: standing.key === rows.selected?.key,
    layout,
    farEnd,
    view,
  });
  const axis: Line = [
    segment(spaces(layout.barAt)),
    ...timeAxis({ now: view.now, farEnd, width: layout.bar, shop }),
  ];
  const all = view.rows - 4 - foot.length;
  const caution = cautionRows(rows, view, all);
  const kept = caution.kept ? caution.lines() : [];
  const budget = all - kept.length;
  const { shown, hidden } = choose(rows.rows, budget, layout, rows.selected?.key ?? null);
  // Rows that don't show are not drawn: a key on a full bench waits for this.
  const inputs = shown.map(inputOf);
  const body = hidden === null ? fitBody(inputs, axis, budget, view) : scrolled(inputs, hidden);
  const spare = budget - body.length;
  const cautions = caution.kept ? kept : spare > 1 ? within(caution.lines(), spare) : [];
  const match = matchRows(rows, view, all - body.length - cautions.length);
  const extra = extraLines(view, all - body.length - cautions.length - match.length);
  const gap = Array.from(
    { length: Math.max(0, all - body.length - cautions.length - match.length - extra.length) },
    () => lineOf(''),
  );
  return {
    lines: [
      dateLine(view, rows.all),
      ...head.lines,
      ...body,
      ...gap,
      ...cautions,
      ...match,
      ...extra,
      ...foot,
    ],
    spoken,
    ticking: head.ticking || inputs.some(({ words }) => words.ticking),
  };
}

/**
 * The rows for which there is room; where not all have it, those around the selected one, with what spoils at the top,
 * and what is said of the others.
 */
function choose(
  rows: readonly Standing[],
  budget: number,
  layout: BenchLayout,
  selected: string | null,
): { readonly shown: readonly Standing[]; readonly hidden: string | null } {
  const each = layout.shape === 'narrow' ? 2 : 1;
  if (rows.length * each <= budget) return { shown: rows, hidden: null };
  const room = Math.max(1, Math.floor((budget - 1) / each));
  const pinned = Math.min(room - 1, rows.filter(({ rank }) => rank === 'spoils').length);
  const rest = rows.slice(pinned);
  const at = Math.max(
    0,
    rest.findIndex(({ key }) => key === selected),
  );
  const from = Math.min(
    Math.max(0, at - (room - pinned) + 1),
    Math.max(0, rest.length - (room - pinned)),
  );
  const isMoreBelow = pinned + from + (room - pinned) < rows.length;
  const ways = [from > 0 ? 'up' : '', isMoreBelow ? 'down' : ''].filter((way) => way !== '');
  return {
    shown: [...rows.slice(0, pinned), ...rest.slice(from, from + room - pinned)],
    hidden: `${rows.length - room} more: ${ways.join(', ')}`,
  };
}

/** Lines that leave one row free beside them, or none of them. */
const within = (lines: readonly Line[], spare: number): readonly Line[] =>
  lines.length < spare ? lines : [];

/** Axis, rows, and what else fits under them. If room lacks, second lines go first, from the bottom; then the axis. */
function fitBody(
  inputs: readonly RowInput[],
  axis: Line,
  budget: number,
  view: View,
): readonly Line[] {
  const firsts = inputs.map((input) => drawRow(input));
  const height = firsts.reduce((sum, lines) => sum + lines.length, 0);
  const hasAxis = height + 1 <= budget;
  const room = Math.max(0, budget - height - (hasAxis ? 1 : 0));
  const seconds = view.columns < 80 ? [] : inputs.slice(0, room).map((input) => drawSecond(input));
  const thirdsFit = view.columns >= 120 && room >= 2 * inputs.length + 1;
  const thirds = thirdsFit ? inputs.map((input) => thirdLine(input)) : [];
  return [
    ...(hasAxis ? [axis] : []),
    ...firsts.flatMap((lines, index) => [
      ...lines,
      ...seconds.slice(index, index + 1),
      ...thirds.slice(index, index + 1),
    ]),
  ];
}

const scrolled = (inputs: readonly RowInput[], hidden: string): readonly Line[] => [
  ...inputs.flatMap((input) => drawRow(input)),
  lineOf(`     ${hidden}`, 'quiet'),
];
