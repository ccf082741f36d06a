import type { ImportedRow } from '../../tracker/bench/index.ts';
import { isCalendarDay, type CalendarDay, type Instant } from '../../tracker/time/index.ts';
import { nearest, stepClasses, type StepClass } from '../../tracker/trade/index.ts';
import { shown, type Problem } from '../schedules/problem.ts';

/** What a file of hours must tell, by the names of its columns, in any order. */
export const hoursColumns = ['date', 'piece', 'step class', 'minutes', 'estimate'] as const;
export type HoursColumn = (typeof hoursColumns)[number];

/** The days that hours can be of, and the instant that a day stands for. */
export type HoursDays = {
  readonly today: CalendarDay;
  readonly noonOf: (day: CalendarDay) => Instant;
};

/** More than a day can't be worked on a day. */
const mostMinutes = 1440;
const earliestDay = '1950-01-01';

export const plainName = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, ' ');

/** One line of a file, with its cells by the names of their columns. */
export type HoursLine = {
  readonly file: string;
  readonly line: number;
  readonly cell: (column: HoursColumn) => string;
  /** Which cell of its line a column is, counted from 1. */
  readonly placeOf: (column: HoursColumn) => number;
  /** Figures are written `7,5`. */
  readonly hasDecimalComma: boolean;
};

/** One line as a step that was timed; or null, and everything that is wrong in it. */
export function rowOf(
  { file, line, cell, placeOf, hasDecimalComma }: HoursLine,
  days: HoursDays,
): { readonly row: ImportedRow | null; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const refuse = (
    field: HoursColumn,
    expected: string,
    says: string,
    near: readonly string[] = [],
  ) => {
    problems.push({
      file,
      line,
      column: placeOf(field),
      field,
      found: shown(cell(field)),
      expected,
      says,
      todo: near.length > 0 ? `Perhaps ${near.join(' or ')}.` : `Write ${expected}.`,
      ...(near.length > 0 ? { nearest: near } : {}),
    });
  };
  const day = cell('date');
  const isDay = isCalendarDay(day);
  if (!isDay) refuse('date', 'a day as 2026-11-24', `${shown(day)} is no day.`);
  else if (day > days.today) refuse('date', 'a day that has been', `${day} is still to come.`);
  else if (day < earliestDay)
    refuse('date', `a day from ${earliestDay} on`, `${day} is too long ago.`);
  const piece = cell('piece');
  if (piece === '') refuse('piece', 'the name of a piece', 'No piece is named.');
  const stepClass = classOf(cell('step class'));
  if (stepClass === null)
    refuse(
      'step class',
      'one of the step classes, as recoat hours names them',
      `${shown(cell('step class'))} is no step class.`,
      nearest(cell('step class'), stepClasses),
    );
  const minutesOf = (field: 'minutes' | 'estimate'): number => {
    const text = hasDecimalComma ? cell(field).replace(',', '.') : cell(field);
    const minutes = /^[+-]?\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
    const expected = `minutes above 0 and up to ${mostMinutes}`;
    if (Number.isNaN(minutes))
      refuse(field, expected, `${shown(cell(field))} is no number of minutes.`);
    else if (minutes <= 0) refuse(field, expected, `${text} is no time worked.`);
    else if (minutes > mostMinutes) refuse(field, expected, `${text} min is more than a day.`);
    return minutes;
  };
  const minutes = minutesOf('minutes');
  const estimate = minutesOf('estimate');
  return {
    row:
      problems.length > 0 || stepClass === null
        ? null
        : { at: days.noonOf(day), piece, stepClass, minutes, estimate },
    problems,
  };
}

const classOf = (text: string): StepClass | null =>
  stepClasses.find((each) => plainName(each) === plainName(text)) ?? null;
