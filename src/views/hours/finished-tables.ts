import type { FinishedHours } from '../../tracker/estimate/index.ts';
import {
  bySchedule,
  costliest,
  overTime,
  pieceOutcomes,
  whereHoursWent,
} from '../../tracker/review/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { lineOf, type GlyphSet, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { monthWords, shopDay } from '../format/index.ts';
import type { HoursPage } from '../screens.ts';
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
  readonly zone: string;
};

/** Whole pieces first, then classes that something is known of, then those that nothing is. */
export function finishedRows({ whole, classes }: FinishedHours): readonly LeanRow[] {
  const rows = classes.map(({ stepClass, ...lean }) => ({ name: stepClass, lean }));
  return [
    { name: 'whole piece', lean: whole },
    ...rows.filter(({ lean }) => lean.pieces > 0),
    ...rows.filter(({ lean }) => lean.pieces === 0),
  ];
}

export function finishedTable(
  page: HoursPage,
  finished: FinishedHours,
  space: TableSpace,
): FinishedTable {
  switch (page) {
    case 'classes':
      return leanTable(space.columns < 80 ? 'class' : 'step class', finishedRows(finished), space);
    case 'schedules': {
      const rows = bySchedule(finished).map(({ name, ...lean }) => ({ name, lean }));
      return leanTable(space.columns < 80 ? 'schedule' : 'finishing schedule', rows, space);
    }
    case 'over time':
      return timeTable(finished, space);
    case 'ranges':
      return outcomeTable(finished, space);
    case 'where':
      return spentTable(finished, space);
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

function timeTable(finished: FinishedHours, space: TableSpace): FinishedTable {
  const time = overTime(finished, monthIn(space.zone));
  const rows = [
    ...(time.last === null ? [] : [{ name: `last ${time.last.count} pieces`, lean: time.last }]),
    ...time.months.map(({ name, ...lean }) => ({ name: monthWords(name), lean })),
  ];
  return leanTable('month', rows, space, [trendWords(time)]);
}

/** `2026-11`, in the shop's zone. */
export const monthIn =
  (zone: string) =>
  (at: Instant): string =>
    shopDay(at, zone).slice(0, 7);

function outcomeTable(finished: FinishedHours, { columns, glyphs }: TableSpace): FinishedTable {
  const outcomes = pieceOutcomes(finished);
  const axis = outcomesAxis(outcomes.pieces);
  return {
    title: 'piece',
    header: (told) => outcomeHeader(told, axis, columns),
    rows: outcomes.pieces.map(
      (each) => (isMarked) => outcomeLine(each, isMarked, axis, columns, glyphs),
    ),
    pieces: outcomes.pieces.map(({ piece }) => piece.id),
    sentences: [outcomesWords(outcomes)],
  };
}

function spentTable(finished: FinishedHours, { columns, glyphs }: TableSpace): FinishedTable {
  const went = whereHoursWent(finished);
  const rows = spentRows(went);
  const all = rows.reduce((sum, { minutes }) => sum + minutes, 0);
  const costly = costliest(finished).map(costlyWords);
  return {
    title: 'hands',
    header: (told) => spentHeader(told, columns),
    rows: rows.map((row) => (isMarked) => spentLine(row, all, isMarked, columns, glyphs)),
    sentences: [
      waitingWords(went),
      ...(costly.length === 0
        ? ['No step class took longer than estimated over all.']
        : ['Cost most against the estimate:', ...costly]),
    ],
  };
}

/** The sentences of a table, each beginning on a line of its own. */
export const sentenceLines = ({ sentences }: FinishedTable, columns: number): readonly Line[] =>
  sentences
    .flatMap((sentence) => wrapWords(sentence, columns))
    .map((text) => lineOf(text, 'strong'));
