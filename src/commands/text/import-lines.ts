import type { HoursFile } from '../../persist/hours-import/read-hours.ts';
import { tellCell } from '../../persist/hours-import/tell-cell.ts';
import type { ImportedHours } from '../../tracker/bench/index.ts';
import { fullDay, shopDay } from '../../views/format/index.ts';
import {
  counted,
  daysOf,
  importCells,
  importColumns,
  toTakeWords,
} from '../../views/import-hours/import-words.ts';
import type { Look } from '../line/look.ts';
import { inColumns } from './columns.ts';

/** What would be taken, by step class, and every line that is refused. */
export function importLines(
  file: string,
  { rows, problems, passedOver }: HoursFile,
  { shop }: Look,
): readonly string[] {
  const refused = [
    ...problems.map(tellCell),
    ...(passedOver.length === 0 ? [] : [`Passed over: the columns ${passedOver.join(', ')}.`]),
  ];
  if (rows.length === 0) return [...refused, `Nothing can be taken from ${file}.`];
  return [
    `${file}: ${toTakeWords(rows, shop.zone)}`,
    '',
    ...inColumns([importColumns, ...importCells(rows)], new Set([1, 2, 3, 4, 5])),
    '',
    ...refused,
    ...(problems.length === 0
      ? ['Nothing is taken yet. To take them: --take']
      : [
          `Nothing is taken yet. Lines to mend: ${new Set(problems.map(({ line }) => line)).size}. To take the others: --take --without-refused`,
        ]),
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
