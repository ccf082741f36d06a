import type { FinishedHours, Lean } from '../../tracker/estimate/index.ts';
import {
  fitEnd,
  fitStart,
  lineOf,
  rangeAxisLine,
  rangePicture,
  ratioAxis,
  segment,
  type Line,
} from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { fullDay, shopDay, shortDay, times } from '../format/index.ts';
import { page } from '../page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { Frame, View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { belowLines } from './furthest-off.ts';
import {
  finishedLayout,
  markCells,
  piecesCells,
  ratioCells,
  ratioRangeCells,
  shownAround,
  tableTitle,
  type HoursLayout,
} from './hours-layout.ts';

/** A class of work, or (the first) all of a piece's work together. */
export type FinishedRow = { readonly name: string; readonly lean: Lean };

export const notYetFromYou = 'from the finishing schedule, not yet from you';

/** Whole pieces first, then classes that something is known of, then those that nothing is. */
export function finishedRows({ whole, classes }: FinishedHours): readonly FinishedRow[] {
  const rows = classes.map(({ stepClass, ...lean }) => ({ name: stepClass, lean }));
  return [
    { name: 'whole piece', lean: whole },
    ...rows.filter(({ lean }) => lean.pieces > 0),
    ...rows.filter(({ lean }) => lean.pieces === 0),
  ];
}

/** Hours over all finished pieces: what each class of work takes against its estimate, and what was furthest off. */
export function drawAllPieces(state: HoursState, finished: FinishedHours, view: View): Frame {
  const { columns, theme } = view;
  const layout = finishedLayout(columns);
  const rows = finishedRows(finished);
  const at = Math.max(0, Math.min(state.at, rows.length - 1));
  const title = wrapWords(titleWords(finished, view), columns).map((text) =>
    lineOf(text, 'strong'),
  );
  const [first = lineOf(''), loud = lineOf('')] = heading(title[0] ?? lineOf(''), view);
  const isCalling = loud[0]?.role === 'loud';
  const head = [first, ...title.slice(1), ...(isCalling || !layout.isNarrow ? [loud] : [])];
  const problems = (state.past?.problems ?? []).flatMap((problem) => wrapWords(problem, columns));
  const foot = [
    ...problems.slice(0, 2).map((text) => lineOf(text, 'refusal')),
    ...messageLines(view),
    ...keyHints(['Tab one piece', 'up, down step class', 'Esc back'], columns),
  ];
  const below = belowLines(finished, rows[at]?.lean ?? finished.whole, rows.length, view);
  const room = Math.max(1, view.rows - head.length - 1 - below.length - foot.length);
  const from = shownAround(at, rows.length, room);
  const table = rows
    .slice(from, from + room)
    .map((row, index) => finishedLine(row, from + index === at, layout, theme.glyphs));
  return {
    lines: page(
      [
        ...head,
        finishedHeader(
          tableTitle(layout.isNarrow ? 'class' : 'step class', at, rows.length, room),
          layout,
        ),
        ...table,
        ...below,
      ],
      foot,
      view,
    ),
  };
}

function titleWords({ pieces, since, until }: FinishedHours, view: View): string {
  const { zone } = view.snapshot.shop;
  if (since === null || until === null)
    return 'hours: no finished piece yet. A piece counts when its steps are done or it has left the bench.';
  const [from, to] = [shopDay(since, zone), shopDay(until, zone)];
  const told =
    from.slice(0, 4) === to.slice(0, 4)
      ? `${shortDay(from)} to ${shortDay(to)}`
      : `${fullDay(from)} to ${fullDay(to)}`;
  const count = `${pieces.length} finished ${pieces.length === 1 ? 'piece' : 'pieces'}`;
  return `hours: ${count}, ${from === to ? shortDay(from) : told}`;
}

function finishedHeader(title: string, { isNarrow, name, picture }: HoursLayout): Line {
  const figures = isNarrow
    ? fitStart('pcs', 3) + fitStart('you take', 10)
    : fitStart('pcs', piecesCells) +
      fitStart('you take', ratioCells) +
      fitStart('range', ratioRangeCells);
  return [
    segment(`${fitEnd(title, markCells + name)}${figures} `, 'quiet'),
    ...rangeAxisLine(ratioAxis, picture),
  ];
}

function finishedLine(
  { name, lean }: FinishedRow,
  isMarked: boolean,
  layout: HoursLayout,
  glyphs: View['theme']['glyphs'],
): Line {
  const { isNarrow, picture } = layout;
  const head = segment(
    (isMarked ? '> ' : '  ') + fitEnd(name, layout.name, glyphs),
    isMarked ? 'strong' : 'text',
  );
  const { ratio, range, pieces } = lean;
  if (ratio === null)
    return [head, segment(isNarrow ? '   not yet from you' : `    ${notYetFromYou}`, 'quiet')];
  const spread = range === null ? '' : `${range.low.toFixed(1)}-${range.high.toFixed(1)}`;
  const figures = isNarrow
    ? fitStart(String(pieces), 3) + fitStart(times(ratio), 10)
    : fitStart(String(pieces), piecesCells) +
      fitStart(times(ratio), ratioCells) +
      fitStart(spread, ratioRangeCells);
  return [
    head,
    segment(`${figures} `, isMarked ? 'strong' : 'text'),
    ...rangePicture(
      { low: range?.low ?? ratio, high: range?.high ?? ratio, estimate: ratio },
      ratioAxis,
      picture,
      glyphs,
    ),
  ];
}
