import type { PieceHours } from '../../tracker/estimate/index.ts';
import type { BackTest } from '../../tracker/learning/index.ts';
import type { Review } from '../../tracker/review/index.ts';
import { minutesSpent } from '../../views/format/index.ts';
import { backTestTable } from '../../views/hours/back-test-table.ts';
import { finishedTable } from '../../views/hours/finished-tables.ts';
import { fewWords, heldWords, offLines } from '../../views/hours/furthest-off.ts';
import { pieceLayout } from '../../views/hours/hours-layout.ts';
import { hoursPages, isReviewPage } from '../../views/hours/hours-pages.ts';
import { pieceRows } from '../../views/hours/piece-rows.ts';
import {
  axisOf,
  pieceHeader,
  pieceLegend,
  pieceLine,
  totalLines,
  totalsNote,
} from '../../views/hours/piece-table.ts';
import { reviewTitle } from '../../views/hours/review-title.ts';
import type { Look } from '../line/look.ts';
import { pieceCalled } from '../names/find-piece.ts';
import { minute } from '../../tracker/time/index.ts';
import { plainLines, textView } from './text-view.ts';

/** Step by step, as numbers and bars. */
export function pieceHoursLines(hours: PieceHours, look: Look): readonly string[] {
  const { columns, theme } = textView(look);
  const rows = pieceRows(hours, 'step');
  const axis = axisOf(rows);
  const layout = pieceLayout(columns);
  const { piece, recorded, sessions } = hours;
  return [
    `hours: ${pieceCalled(piece)}, recorded ${minutesSpent(recorded * minute)} in ${sessions} ${sessions === 1 ? 'session' : 'sessions'}`,
    '',
    ...plainLines([
      pieceHeader('step', axis, layout),
      ...rows.map((row) => pieceLine(row, false, axis, layout, theme.glyphs)),
      ...totalLines(hours, layout),
      ...[totalsNote(hours, rows.length, columns)].filter((note) => note !== null),
      pieceLegend(layout.isNarrow, theme.glyphs),
    ]),
  ];
}

/** Over all finished pieces: every way of looking at them that the screen has, one after another. */
export function finishedHoursLines(review: Review, look: Look): readonly string[] {
  if (review.pieces === 0)
    return [
      'No finished piece yet. A piece counts when its steps are done or it has left the bench.',
    ];
  const { columns, theme } = textView(look);
  const space = { columns, glyphs: theme.glyphs };
  return [
    reviewTitle(review, look.shop.zone, columns),
    ...hoursPages.filter(isReviewPage).flatMap((page) => {
      const table = finishedTable(page, review, space);
      return [
        '',
        ...plainLines([table.header(table.title), ...table.rows.map((row) => row(false))]),
        ...[fewWords(table.leans ?? [])].filter((few) => few !== null),
        ...table.sentences,
        ...(page === 'classes'
          ? [
              heldWords(review.held, review.imported),
              ...plainLines(offLines(review.whole.steps, columns, theme.glyphs)),
            ]
          : []),
      ];
    }),
  ];
}

/** What the back-test came to, as the screen has it. */
export function backTestLines(result: BackTest, look: Look): readonly string[] {
  const { columns, theme } = textView(look);
  const table = backTestTable(result, { columns, glyphs: theme.glyphs });
  const rows = [table.header(table.title), ...table.rows.map((row) => row(false))];
  return [...(table.rows.length === 0 ? [] : [...plainLines(rows), '']), ...table.sentences];
}
