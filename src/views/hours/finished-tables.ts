import type { Review } from '../../tracker/review/index.ts';
import { lineOf, type GlyphSet, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { monthWords } from '../format/index.ts';
import type { ReviewPage } from './hours-pages.ts';
import { finishedLayout } from './hours-layout.ts';
import { outcomeHeader, outcomeLine, outcomesAxis } from './outcome-table.ts';
import { ratioHeader, ratioLine, type LeanRow } from './ratio-table.ts';
import { costlyWords, outcomesWords, spentRows, trendWords, waitingWords } from './review-words.ts';
import { spentHeader, spentLine } from './spent-table.ts';

/** One way of looking at finished pieces: a table whose rows can be marked, and sentences about all of it. */
export type FinishedTable = {
  /** Of the first column. */
  readonly title: string;
  readonly header: (title: string) => Line;
  readonly rows: readonly ((isMarked: boolean) => Line)[];
  readonly sentences: readonly string[];
  /** What each row tells of, where single steps can be named for it. */
  readonly leans?: readonly LeanRow[];
  /** Ids, where each row is a piece. */
  readonly pieces?: readonly string[];
};

/** What tables are drawn by. */
export type TableSpace = {
  readonly columns: number;
  readonly glyphs: GlyphSet;
};

/** Whole pieces first, then classes that something is known of, then those that nothing is. */
export function finishedRows({ whole, classes }: Review): readonly LeanRow[] {
  const rows = classes.map(({ stepClass, ...lean }) => ({ name: stepClass, lean }));
  return [
    { name: 'whole piece', lean: whole },
    ...rows.filter(({ lean }) => lean.pieces > 0),
    ...rows.filter(({ lean }) => lean.pieces === 0),
  ];
}

export function finishedTable(page: ReviewPage, review: Review, space: TableSpace): FinishedTable {
  switch (page) {
    case 'classes':
      return leanTable(space.columns < 80 ? 'class' : 'step class', finishedRows(review), space);
    case 'schedules': {
      const rows = review.schedules.map(({ name, ...lean }) => ({ name, lean }));
      return leanTable(space.columns < 80 ? 'schedule' : 'finishing schedule', rows, space);
    }
    case 'over time':
      return timeTable(review, space);
    case 'ranges':
      return outcomeTable(review, space);
    case 'where':
      return spentTable(review, space);
  }
}

function leanTable(
  title: string,
  rows: readonly LeanRow[],
  { columns, glyphs }: TableSpace,
  sentences: readonly string[] = [],
): FinishedTable {
  const layout = finishedLayout(columns);
  return {
    title,
    header: (told) => ratioHeader(told, layout),
    rows: rows.map((row) => (isMarked) => ratioLine(row, isMarked, layout, glyphs)),
    leans: rows,
    sentences,
  };
}

function timeTable({ time }: Review, space: TableSpace): FinishedTable {
  const rows = [
    ...(time.last === null ? [] : [{ name: `last ${time.last.count} pieces`, lean: time.last }]),
    ...time.months.map(({ name, ...lean }) => ({ name: monthWords(name), lean })),
  ];
  return leanTable('month', rows, space, rows.length === 0 ? [] : [trendWords(time)]);
}

function outcomeTable(
  { outcomes, imported }: Review,
  { columns, glyphs }: TableSpace,
): FinishedTable {
  const axis = outcomesAxis(outcomes.pieces);
  return {
    title: 'piece',
    header: (told) => (outcomes.pieces.length === 0 ? [] : outcomeHeader(told, axis, columns)),
    rows: outcomes.pieces.map(
      (each) => (isMarked) => outcomeLine(each, isMarked, axis, columns, glyphs),
    ),
    pieces: outcomes.pieces.map(({ piece }) => piece.id),
    sentences: [outcomesWords(outcomes, imported)],
  };
}

function spentTable(
  { went, costliest, pieces, imported }: Review,
  { columns, glyphs }: TableSpace,
): FinishedTable {
  const rows = spentRows(went, columns < 60);
  const all = rows.reduce((sum, { minutes }) => sum + minutes, 0);
  const costly = costliest.map(costlyWords);
  return {
    title: 'hands',
    header: (told) => (rows.length === 0 ? [] : spentHeader(told, columns)),
    rows: rows.map((row) => (isMarked) => spentLine(row, all, isMarked, columns, glyphs)),
    sentences: [
      waitingWords(went, imported),
      ...(pieces === 0 ? [] : costliestWords(costly, imported)),
    ],
  };
}

const costliestWords = (costly: readonly string[], imported: number): readonly string[] =>
  costly.length === 0
    ? ['No step class took longer than estimated over all.']
    : [`Cost most against the estimate${imported === 0 ? '' : ', imported hours too'}:`, ...costly];

/** The sentences of a table, each beginning on a line of its own. */
export const sentenceLines = ({ sentences }: FinishedTable, columns: number): readonly Line[] =>
  sentences
    .flatMap((sentence) => wrapWords(sentence, columns))
    .map((text) => lineOf(text, 'strong'));
