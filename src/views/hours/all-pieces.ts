import type { Review } from '../../tracker/review/index.ts';
import { lineOf } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { fullDay, shopDay, shortDay } from '../format/index.ts';
import { page } from '../page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { Frame, View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { backTestTable } from './back-test-table.ts';
import { finishedTable, sentenceLines, type FinishedTable } from './finished-tables.ts';
import { belowLines } from './furthest-off.ts';
import { shownAround, tableTitle } from './hours-layout.ts';
import { isReviewPage, pageOf, tabHint } from './hours-pages.ts';
import { lookingBackLines } from './looking-back-lines.ts';

/**
 * Hours over all finished pieces, looked at by step class, by finishing schedule, over time, as past ranges, or by what
 * they went into.
 */
export function drawAllPieces(state: HoursState, review: Review, view: View): Frame {
  const { columns } = view;
  const isNarrow = columns < 80;
  const shown = pageOf(state);
  const table = tableOfPage(state, review, view);
  const at = Math.max(0, Math.min(state.at, table.rows.length - 1));
  const title = wrapWords(titleWords(review, view), columns).map((text) => lineOf(text, 'strong'));
  const [first = lineOf(''), loud = lineOf('')] = heading(title[0] ?? lineOf(''), view);
  const isCalling = loud[0]?.role === 'loud';
  const head = [first, ...title.slice(1), ...(isCalling || !isNarrow ? [loud] : [])];
  const { lookingBack } = view.snapshot;
  const told = lookingBack?.problems ?? state.past?.problems ?? [];
  const problems = told.flatMap((problem) => wrapWords(problem, columns));
  const foot = [
    ...problems.slice(0, 2).map((text) => lineOf(text, 'refusal')),
    ...(state.piece === null ? [] : [lineOf('Reading that piece.', 'strong')]),
    ...lookingBackLines(lookingBack, shown, columns, view.theme.glyphs),
    ...messageLines(view),
    ...keyHints(
      [
        tabHint(shown),
        ...(shown === 'ranges' && table.rows.length > 0
          ? ['Enter that piece', 'x leave it out of learning']
          : []),
        ...(shown === 'classes' ? ['i hours kept elsewhere'] : []),
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
          shown === 'classes' ? review.held : null,
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
  const none = table.rows.length === 0 && shown !== 'ranges' && shown !== 'back-test';
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
  review: Review,
  { columns, theme, snapshot }: View,
): FinishedTable => {
  const shown = pageOf(state);
  const space = { columns, glyphs: theme.glyphs };
  return isReviewPage(shown)
    ? finishedTable(shown, review, space)
    : backTestTable(snapshot.lookingBack?.backTest ?? null, space);
};

/** `14 finished pieces, 12 of them imported` */
export function finishedCount({ pieces, imported }: Pick<Review, 'pieces' | 'imported'>): string {
  const marked = imported === 0 ? '' : `, ${imported} of them imported`;
  return `${pieces} finished ${pieces === 1 ? 'piece' : 'pieces'}${marked}`;
}

function titleWords(review: Review, view: View): string {
  const { since, until } = review;
  const { lookingBack } = view.snapshot;
  if (lookingBack !== undefined && lookingBack.review === null)
    return `hours: ${finishedCount(review)} on the bench, past years not read yet`;
  const { zone } = view.snapshot.shop;
  if (since === null || until === null)
    return 'hours: no finished piece yet. A piece counts when its steps are done or it has left the bench.';
  const [from, to] = [shopDay(since, zone), shopDay(until, zone)];
  const told =
    from.slice(0, 4) === to.slice(0, 4)
      ? `${shortDay(from)} to ${shortDay(to)}`
      : `${fullDay(from)} to ${fullDay(to)}`;
  const count = finishedCount(review);
  return `hours: ${count}, ${from === to ? shortDay(from) : told}`;
}
