import type { HoursFile } from '../../persist/hours-import/read-hours.ts';
import { tellProblem } from '../../persist/schedules/problem.ts';
import type { ImportedHours, ImportedRow } from '../../tracker/bench/index.ts';
import { minute } from '../../tracker/time/index.ts';
import { fullDay, minutesSpent, shopDay, times } from '../../views/format/index.ts';
import type { Look } from '../line/look.ts';
import { inColumns } from './columns.ts';

const counted = (count: number, unit: string): string =>
  `${count} ${unit}${count === 1 ? '' : 's'}`;

/** What would be taken, by step class, and every line that is refused. */
export function importLines(
  file: string,
  { rows, problems, passedOver }: HoursFile,
  { shop }: Look,
): readonly string[] {
  const refused = [
    ...problems.map(tellProblem),
    ...(passedOver.length === 0 ? [] : [`Passed over: the columns ${passedOver.join(', ')}.`]),
  ];
  if (rows.length === 0) return [...refused, `Nothing can be taken from ${file}.`];
  return [
    `${file}: ${counted(rows.length, 'line')} of ${counted(piecesIn(rows), 'piece')}, ${daysOf(rows, shop.zone)}`,
    '',
    ...inColumns(
      [
        ['step class', 'lines', 'pcs', 'took', 'estimate', ''],
        ...[...Map.groupBy(rows, ({ stepClass }) => stepClass)].map(([stepClass, own]) =>
          cellsOf(stepClass, own),
        ),
        cellsOf('together', rows),
      ],
      new Set([1, 2, 3, 4, 5]),
    ),
    '',
    ...refused,
    ...(problems.length === 0
      ? ['Nothing is taken yet. To take them: --take']
      : [
          `Nothing is taken yet. Lines to mend: ${new Set(problems.map(({ line }) => line)).size}. To take the others: --take --without-refused`,
        ]),
  ];
}

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

/** What was taken in, under the numbers by which it is taken out. */
export const importsLines = (
  imports: readonly ImportedHours[],
  { shop }: Look,
): readonly string[] =>
  imports.length === 0
    ? ['No hours were imported. To look at a file: recoat import-hours FILE']
    : inColumns(
        imports.map(({ file, rows, takenAt }, index) => [
          String(index + 1),
          file,
          counted(rows.length, 'line'),
          daysOf(rows, shop.zone),
          `taken ${fullDay(shopDay(takenAt, shop.zone))}`,
        ]),
        new Set([0, 2]),
      );

function daysOf(rows: readonly ImportedRow[], zone: string): string {
  const days = rows.map(({ at }) => shopDay(at, zone)).sort();
  const [first = '', last = ''] = [days[0], days.at(-1)];
  return first === last ? fullDay(first) : `${fullDay(first)} to ${fullDay(last)}`;
}

const piecesIn = (rows: readonly ImportedRow[]): number =>
  new Set(rows.map(({ piece }) => piece)).size;
const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);
