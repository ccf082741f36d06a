import type { FinishedHours } from '../../tracker/estimate/index.ts';
import { lineOf } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { fullDay, shopDay, shortDay } from '../format/index.ts';
import { page } from '../page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { Frame, View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { finishedTable, sentenceLines, type FinishedTable } from './finished-tables.ts';
import { belowLines } from './furthest-off.ts';
import { shownAround, tableTitle } from './hours-layout.ts';
import { pageOf, tabHint } from './hours-pages.ts';

/**
 * Hours over all finished pieces, looked at by step class, by finishing schedule, over time, as past ranges, or by what
 * they went into.
 */
export function drawAllPieces(state: HoursState, finished: FinishedHours, view: View): Frame {
  const { columns } = view;
  const isNarrow = columns < 80;
  const shown = pageOf(state);
  const table = tableOfPage(state, finished, view);
  const at = Math.max(0, Math.min(state.at, table.rows.length - 1));
  const title = wrapWords(titleWords(finished, view), columns).map((text) =>
    lineOf(text, 'strong'),
  );
  const [first = lineOf(''), loud = lineOf('')] = heading(title[0] ?? lineOf(''), view);
  const isCalling = loud[0]?.role === 'loud';
  const head = [first, ...title.slice(1), ...(isCalling || !isNarrow ? [loud] : [])];
  const problems = (state.past?.problems ?? []).flatMap((problem) => wrapWords(problem, columns));
  const foot = [
    ...problems.slice(0, 2).map((text) => lineOf(text, 'refusal')),
    ...messageLines(view),
    ...keyHints(
      [
        tabHint(shown),
        ...(shown === 'ranges' ? ['Enter that piece', 'x leave it out of learning'] : []),
        'left, right',
        'up, down',
        'Esc back',
      ],
      columns,
    ),
  ];
  const marked = table.leans?.[at]?.lean ?? null;
  const sentences = sentenceLines(table, columns);
  const below = [
    ...(isNarrow || sentences.length === 0 ? [] : [lineOf('')]),
    ...sentences,
    ...(shown === 'ranges' || shown === 'where' || marked === null
      ? []
      : belowLines(
          shown === 'classes' ? finished.held : null,
          table.leans ?? [],
          marked,
          table.rows.length + sentences.length,
          view,
        )),
  ];
  const room = Math.max(1, view.rows - head.length - 1 - below.length - foot.length);
  const from = shownAround(at, table.rows.length, room);
  const rows = table.rows.slice(from, from + room).map((row, index) => row(from + index === at));
  const header = table.header(tableTitle(table.title, at, table.rows.length, room));
  const none = table.rows.length === 0 && shown !== 'ranges';
  const nothing = none
    ? wrapWords('Nothing was done and timed on a finished piece yet.', columns)
    : [];
  return {
    lines: page(
      [...head, header, ...rows, ...nothing.map((text) => lineOf(text, 'quiet')), ...below],
      foot,
      view,
    ),
  };
}

export const tableOfPage = (
  state: Pick<HoursState, 'page'>,
  finished: FinishedHours,
  { columns, theme, snapshot }: View,
): FinishedTable =>
  finishedTable(pageOf(state), finished, {
    columns,
    glyphs: theme.glyphs,
    zone: snapshot.shop.zone,
  });

/** `14 finished pieces, 12 of them imported` */
export function finishedCount(pieces: FinishedHours['pieces']): string {
  const imported = pieces.filter((piece) => piece.imported === true).length;
  const marked = imported === 0 ? '' : `, ${imported} of them imported`;
  return `${pieces.length} finished ${pieces.length === 1 ? 'piece' : 'pieces'}${marked}`;
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
  const count = finishedCount(pieces);
  return `hours: ${count}, ${from === to ? shortDay(from) : told}`;
}
