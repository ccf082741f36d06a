import { CsvError, parse } from 'csv-parse/sync';
import type { ImportedRow } from '../../tracker/bench/index.ts';
import { nearest } from '../../tracker/trade/index.ts';
import { fingerprint } from '../schedules/fingerprint.ts';
import { shown, type Problem } from '../schedules/problem.ts';
import { hoursColumns, plainName, rowOf, type HoursDays } from './read-row.ts';

export type HoursFile = {
  readonly rows: readonly ImportedRow[];
  /** Of the rows, so that a file saved in another way, or under another name, is known again. */
  readonly fingerprint: string;
  readonly problems: readonly Problem[];
  /** Columns that tell nothing that is wanted. */
  readonly passedOver: readonly string[];
};

type Line = { readonly line: number; readonly cells: readonly string[] };

/** Reads a file of comma-separated values (RFC 4180; semicolons and tabs too) with hours. Nothing is guessed: what can't be taken is told line by line. */
export function readHours(file: string, text: string, days: HoursDays): HoursFile {
  const delimiter = delimiterOf(text);
  const records = recordsOf(file, text, delimiter);
  if ('says' in records) return nothingBut(records);
  const [header = { line: 1, cells: [] }, ...lines] = records;
  const names = header.cells.map(plainName);
  const wrong = wrongHeader(file, header, names);
  if (wrong !== null) return nothingBut(wrong);
  const problems: Problem[] = [];
  const rows = lines.flatMap(({ line, cells }): ImportedRow[] => {
    const read = rowOf(
      {
        file,
        line,
        cell: (column) => cells[names.indexOf(column)] ?? '',
        placeOf: (column) => names.indexOf(column) + 1,
        hasDecimalComma: delimiter === ';',
      },
      days,
    );
    problems.push(...read.problems);
    return read.row === null ? [] : [read.row];
  });
  return {
    rows,
    fingerprint: fingerprint(rows.map((row) => JSON.stringify(row)).sort()),
    problems,
    passedOver: header.cells.filter((_, at) => !hoursColumns.some((each) => each === names[at])),
  };
}

/** What is wrong with the line that names the columns; null where each is there once. */
function wrongHeader(
  file: string,
  { line, cells }: Line,
  names: readonly string[],
): Problem | null {
  const where = { file, line, column: 1, field: '', found: shown(cells.join(', ')) };
  const at = { ...where, expected: hoursColumns.join(', '), todo: sayColumns };
  if (cells.length === 0) return { ...at, says: 'The file is empty.' };
  const missing = hoursColumns.filter((column) => !names.includes(column));
  if (missing.length > 0) {
    const others = cells.filter((cell) => !hoursColumns.some((each) => each === plainName(cell)));
    const says = `There is no column ${missing.join(', ')}.`;
    const near = missing.flatMap((column) => nearest(column, others));
    return { ...at, says, nearest: near };
  }
  const twice = hoursColumns.filter(
    (column) => names.indexOf(column) !== names.lastIndexOf(column),
  );
  const [first] = twice;
  if (first === undefined) return null;
  const says = `There are two columns ${twice.join(', ')}.`;
  return { ...at, column: names.lastIndexOf(first) + 1, says, nearest: [] };
}

const sayColumns = `Write a first line with the columns ${hoursColumns.join(', ')}, in any order.`;

const nothingBut = (only: Problem): HoursFile => ({
  rows: [],
  fingerprint: fingerprint([]),
  problems: [only],
  passedOver: [],
});

/** What stands between the columns' names most often. */
function delimiterOf(text: string): string {
  const first = text.trimStart().split(/\r?\n/, 1)[0] ?? '';
  const count = (sign: string): number => first.split(sign).length;
  return [',', ';', '\t'].reduce((a, b) => (count(b) > count(a) ? b : a));
}

function recordsOf(file: string, text: string, delimiter: string): readonly Line[] | Problem {
  try {
    const found = parse(text, {
      bom: true,
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as readonly { info: { lines: number }; record: readonly string[] }[];
    // A record that is all separators is an empty line of a spreadsheet.
    return found
      .map(({ info, record }) => ({ line: info.lines, cells: record }))
      .filter(({ cells }) => cells.some((cell) => cell !== ''));
  } catch (thrown) {
    if (!(thrown instanceof CsvError)) throw thrown;
    const line = typeof thrown['lines'] === 'number' ? thrown['lines'] : 1;
    return {
      file,
      line,
      column: 1,
      field: '',
      found: shown(''),
      expected: 'quotes in pairs',
      says: 'A quote is opened and not closed, or stands inside a value.',
      todo: 'Put the whole value in quotes, and write a quote in it twice.',
    };
  }
}
