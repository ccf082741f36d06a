import type { PieceHours } from '../../tracker/estimate/index.ts';
import type { BackTest } from '../../tracker/learning/index.ts';
import type { Review } from '../../tracker/review/index.ts';
import { minutesSpent } from '../../views/format/index.ts';
import { backTestTable } from '../../views/hours/back-test-table.ts';
import { finishedTable, type FinishedTable } from '../../views/hours/finished-tables.ts';
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
import { nothingTimed } from '../../views/hours/review-words.ts';
import type { Look } from '../line/look.ts';
import { pieceCalled } from '../names/find-piece.ts';
import { minute } from '../../tracker/time/index.ts';
import { plainLines, sentenceIn, textView } from './text-view.ts';

/** Step by step, as numbers and bars. */
export function pieceHoursLines(hours: PieceHours, look: Look): readonly string[] {
  const { columns, theme } = textView(look);
  const rows = pieceRows(hours, 'step');
  const axis = axisOf(rows);
  const layout = pieceLayout(columns);
  const { piece, recorded, sessions } = hours;
  const title = `hours: ${pieceCalled(piece)}, recorded ${minutesSpent(recorded * minute)} in ${sessions} ${sessions === 1 ? 'session' : 'sessions'}`;
  return [
    ...sentenceIn(title, columns),
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
    ...sentenceIn(reviewTitle(review, look.shop.zone, columns), columns),
    ...hoursPages.filter(isReviewPage).flatMap((page) => {
      const table = finishedTable(page, review, space);
      const few = fewWords(table.leans ?? []);
      const told = [
        ...(table.rows.length === 0 && table.leans !== undefined ? [nothingTimed] : []),
        ...(few === null ? [] : [few]),
        ...table.sentences,
        ...(page === 'classes' ? [heldWords(review.held, review.imported)] : []),
      ];
      return [
        '',
        ...tableLines(table),
        ...told.flatMap((sentence) => sentenceIn(sentence, columns)),
        ...(page === 'classes'
          ? plainLines(offLines(review.whole.steps, columns, theme.glyphs))
          : []),
      ];
    }),
  ];
}

/** What the back-test came to, as the screen has it. */
export function backTestLines(result: BackTest, look: Look): readonly string[] {
  const { columns, theme } = textView(look);
  const table = backTestTable(result, { columns, glyphs: theme.glyphs });
  return [
    ...(table.rows.length === 0 ? [] : [...tableLines(table), '']),
    ...table.sentences.flatMap((sentence) => sentenceIn(sentence, columns)),
  ];
}

/** A table that has no row needs no head. */
const tableLines = ({ header, title, rows }: FinishedTable): readonly string[] =>
  rows.length === 0 ? [] : plainLines([header(title), ...rows.map((row) => row(false))]);
