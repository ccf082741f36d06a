import type { FinishedHours, PieceHours } from '../../tracker/estimate/index.ts';
import { minutesSpent, times } from '../../views/format/index.ts';
import { finishedRows, notYetFromYou } from '../../views/hours/all-pieces.ts';
import { heldWords } from '../../views/hours/furthest-off.ts';
import { pieceLayout } from '../../views/hours/hours-layout.ts';
import { pieceRows } from '../../views/hours/piece-rows.ts';
import {
  axisOf,
  pieceHeader,
  pieceLegend,
  pieceLine,
  totalLines,
} from '../../views/hours/piece-table.ts';
import type { Look } from '../line/look.ts';
import { pieceCalled } from '../names/find-piece.ts';
import { minute } from '../../tracker/time/index.ts';
import { inColumns } from './columns.ts';
import { plainLines, textView } from './text-view.ts';

/** Step by step, as numbers and bars. */
export function pieceHoursLines(hours: PieceHours, look: Look): readonly string[] {
  const { columns, theme } = textView(look);
  const rows = pieceRows(hours, 'step');
  const axis = axisOf(rows);
  const layout = pieceLayout(columns);
  const { piece, recorded, sessions } = hours;
  return [
    `hours: ${pieceCalled(piece)}, ${minutesSpent(recorded * minute)} in ${sessions} ${sessions === 1 ? 'session' : 'sessions'}`,
    '',
    ...plainLines([
      pieceHeader('step', axis, layout),
      ...rows.map((row) => pieceLine(row, false, axis, layout, theme.glyphs)),
      ...totalLines(hours, layout),
      pieceLegend(layout.isNarrow, theme.glyphs),
    ]),
  ];
}

/** Over all finished pieces, by kind of work. */
export function finishedHoursLines(finished: FinishedHours): readonly string[] {
  const count = finished.pieces.length;
  if (count === 0)
    return [
      'No finished piece yet. A piece counts when its steps are done or it has left the bench.',
    ];
  return [
    `hours: ${count} finished ${count === 1 ? 'piece' : 'pieces'}`,
    '',
    ...inColumns(
      [
        ['step class', 'pcs', 'you take', 'range'],
        ...finishedRows(finished).map(({ name, lean: { pieces, ratio, range } }) =>
          ratio === null
            ? [name, '', '', notYetFromYou]
            : [
                name,
                String(pieces),
                times(ratio),
                range === null ? '' : `${range.low.toFixed(1)}-${range.high.toFixed(1)}`,
              ],
        ),
      ],
      new Set([1, 2]),
    ),
    '',
    heldWords(finished.held),
  ];
}
