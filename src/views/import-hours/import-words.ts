import type { ImportedRow } from '../../tracker/bench/index.ts';
import { minute } from '../../tracker/time/index.ts';
import { fullDay, minutesSpent, shopDay, times, type Zone } from '../format/index.ts';

/** `5 lines of 4 pieces, Sat 14 Mar 2026 to Tue 2 Jun 2026` */
export const toTakeWords = (rows: readonly ImportedRow[], zone: Zone): string =>
  `${counted(rows.length, 'line')} of ${counted(piecesIn(rows), 'piece')}, ${daysOf(rows, zone)}`;

export const importColumns = ['step class', 'lines', 'pcs', 'took', 'estimate', ''] as const;

/** What would be taken, a row a step class and one for all together, in the columns of `importColumns`. */
export const importCells = (rows: readonly ImportedRow[]): readonly (readonly string[])[] => [
  ...[...Map.groupBy(rows, ({ stepClass }) => stepClass)].map(([name, own]) => cellsOf(name, own)),
  cellsOf('together', rows),
];

function cellsOf(name: string, rows: readonly ImportedRow[]): readonly string[] {
  const took = sum(rows.map(({ minutes }) => minutes));
  const estimate = sum(rows.map((row) => row.estimate));
  return [
    name,
    String(rows.length),
    String(piecesIn(rows)),
    minutesSpent(took * minute),
    minutesSpent(estimate * minute),
    times(took / estimate),
  ];
}

export const counted = (count: number, unit: string): string =>
  `${count} ${unit}${count === 1 ? '' : 's'}`;

export function daysOf(rows: readonly ImportedRow[], zone: Zone): string {
  const days = rows.map(({ at }) => shopDay(at, zone)).sort();
  const [first = '', last = ''] = [days[0], days.at(-1)];
  return first === last ? fullDay(first) : `${fullDay(first)} to ${fullDay(last)}`;
}

const piecesIn = (rows: readonly ImportedRow[]): number =>
  new Set(rows.map(({ piece }) => piece)).size;
const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);
