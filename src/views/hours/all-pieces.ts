import type { Review } from '../../tracker/review/index.ts';
import { lineOf } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { page } from '../page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import type { Frame, View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { backTestTable } from './back-test-table.ts';
import { finishedTable, sentenceLines, type FinishedTable } from './finished-tables.ts';
import { belowLines, heldWords } from './furthest-off.ts';
import { takeBackHints } from './take-back.ts';
import { nothingTimed } from './review-words.ts';
import { shownAround, tableTitle } from './hours-layout.ts';
import { isReviewPage, pageOf, pieceTurnedTo, tabHint } from './hours-pages.ts';
import { lookingBackLines } from './looking-back-lines.ts';
import { finishedCount, reviewTitle } from './review-title.ts';

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
        tabHint(shown, pieceTurnedTo(state, view.snapshot) !== null),
        ...(shown === 'ranges' && table.rows.length > 0
          ? ['Enter that piece', 'x leave it out of learning']
          : []),
        ...(shown === 'classes' ? ['i hours kept elsewhere'] : []),
        'left, right',
        'up, down',
        ...takeBackHints(view.snapshot.bench, columns, view.theme.glyphs),
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
          shown === 'classes' ? heldWords(review.held, review.imported) : null,
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
  const none =
    table.rows.length === 0 && (table.leans !== undefined || table.sentences.length === 0);
  const nothing = none ? wrapWords(nothingTimed, columns) : [];
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

function titleWords(review: Review, view: View): string {
  const { lookingBack, shop } = view.snapshot;
  return lookingBack !== undefined && lookingBack.review === null
    ? `hours: ${finishedCount(review)} on the bench, past years not read yet`
    : reviewTitle(review, shop.zone, view.columns);
}
