import type { PieceHours } from '../../tracker/estimate/index.ts';
import {
  fitEnd,
  fitStart,
  glyphSets,
  lineOf,
  minutesAxis,
  rangeAxisLine,
  rangePicture,
  segment,
  spaces,
  type GlyphSet,
  type Line,
  type RangeAxis,
} from '../drawing/index.ts';
import { rangeInTable } from '../format/index.ts';
import {
  expectedCells,
  markCells,
  minutesCells,
  rangeCells,
  verdictCells,
  type HoursLayout,
} from './hours-layout.ts';
import { narrowTotals } from './narrow-totals.ts';
import { roleOf, type PieceRow } from './piece-rows.ts';

/** One axis for all rows, so that they can be compared by eye. */
export const axisOf = (rows: readonly PieceRow[]): RangeAxis =>
  minutesAxis(
    Math.max(1, ...rows.flatMap(({ expected, minutes }) => [expected.high, minutes ?? 0])),
  );

export function pieceHeader(
  title: string,
  axis: RangeAxis,
  { isNarrow, name, picture }: HoursLayout,
): Line {
  const head = fitEnd(title, markCells + name);
  const figures = isNarrow
    ? fitStart('min', minutesCells) + spaces(verdictCells)
    : fitStart('est', expectedCells) +
      fitStart('range', rangeCells) +
      fitStart('min', minutesCells) +
      spaces(verdictCells + 1);
  return [segment(head + figures, 'quiet'), ...rangeAxisLine(axis, picture)];
}

export function pieceLine(
  row: PieceRow,
  isMarked: boolean,
  axis: RangeAxis,
  { isNarrow, name, picture }: HoursLayout,
  glyphs: GlyphSet,
): Line {
  const { expected, minutes } = row;
  const role = isMarked ? 'strong' : 'text';
  const figures = isNarrow
    ? ''
    : figuresOf(expected.minutes, rangeInTable(expected.low, expected.high));
  return [
    segment((isMarked ? '> ' : '  ') + nameBeside(figures, row.name, name, glyphs), role),
    segment(figures, 'quiet'),
    segment(fitStart(minutes === null ? '-' : whole(minutes), minutesCells), role),
    segment(` ${fitEnd(row.verdict, verdictCells - 1)}`, row.role),
    segment(isNarrow ? '' : ' '),
    ...rangePicture(
      {
        low: expected.low,
        high: expected.high,
        estimate: expected.minutes,
        ...(minutes === null ? {} : { actual: minutes }),
      },
      axis,
      picture,
      glyphs,
    ),
  ];
}

/** Estimate and range in their columns; what is too long for its column keeps its distance all the same. */
function figuresOf(minutes: number, range: string): string {
  const estimate = ` ${whole(minutes)}`.padStart(expectedCells);
  return estimate + (range === '' ? '' : ` ${range}`).padStart(rangeCells);
}

/** What a row is called, in the cells that its figures leave. */
const nameBeside = (
  figures: string,
  text: string,
  cells: number,
  glyphs: GlyphSet = 'blocks',
): string => fitEnd(text, cells - Math.max(0, figures.length - expectedCells - rangeCells), glyphs);

/** What is done so far, what is to go, and setup, which no size explains. */
export function totalLines(hours: PieceHours, layout: HoursLayout): readonly Line[] {
  const { isNarrow, name } = layout;
  const { done, toGo, setup, other } = hours;
  const about = setup.about ? 'about; ' : '';
  if (isNarrow) return narrowTotals(hours, columnsOf(layout));
  const total = (text: string, minutes: number, range: string): Line => {
    const figures = figuresOf(minutes, range);
    return [
      segment(spaces(markCells) + nameBeside(figures, text, name)),
      segment(figures, 'quiet'),
    ];
  };
  return [
    ...(done === null
      ? []
      : [
          [
            ...total(
              'done so far',
              done.expected.minutes,
              rangeInTable(done.expected.low, done.expected.high),
            ),
            segment(fitStart(whole(done.minutes), minutesCells), 'strong'),
            segment(` ${done.verdict ?? ''}`, roleOf(done.verdict)),
          ],
        ]),
    ...(toGo === null
      ? []
      : [
          [
            ...total('to go', toGo.minutes, rangeInTable(toGo.low, toGo.high)),
            segment(spaces(minutesCells + 1)),
            segment(countedOffWords(hours), 'quiet'),
          ],
        ]),
    [
      ...total('setup, cleanup', setup.expected, ''),
      segment(fitStart(whole(setup.minutes), minutesCells)),
      segment(` ${about}once a session, not by area`, 'quiet'),
    ],
    ...(other < 1
      ? []
      : [
          [
            segment(spaces(markCells) + fitEnd('other work', name)),
            segment(spaces(expectedCells + rangeCells)),
            segment(fitStart(whole(other), minutesCells)),
            segment(' of no step', 'quiet'),
          ],
        ]),
  ];
}

/** A narrow layout's cells together are the terminal's. */
const columnsOf = ({ name, picture }: HoursLayout): number =>
  markCells + name + minutesCells + verdictCells + picture;

/** `less 12 spent on what is begun`; where it took more than it was to, `less 15 of 51 spent on what is begun`. */
function countedOffWords({ begun, countedOff }: PieceHours): string {
  if (begun < 1) return '';
  const [off, all] = [whole(countedOff), whole(begun)];
  return `less ${off === all ? all : `${off} of ${all}`} spent on what is begun`;
}

/** Why the totals' estimates and ranges are none that the eye adds up; null where a total has one row. */
export function totalsNote({ done, toGo }: PieceHours, rows: number, columns: number): Line | null {
  if (rows < 2 || columns < 40 || (done === null && toGo === null)) return null;
  return lineOf(
    columns < 80
      ? 'Expected totals: not the rows added up.'
      : 'Expected totals are not the rows added up: slow ones and fast ones even out.',
    'quiet',
  );
}

/** What the signs of the pictures mean. */
export function pieceLegend(isNarrow: boolean, glyphs: GlyphSet): Line {
  const { rangeLow, rangeHigh, estimate, actual } = glyphSets[glyphs];
  return lineOf(
    isNarrow
      ? `${rangeLow}${rangeHigh} 4 in 5  ${estimate} estimate  ${actual} yours`
      : `${rangeLow} ${rangeHigh} four times in five   ${estimate} estimate   ${actual} yours`,
    'quiet',
  );
}

const whole = (minutes: number): string => String(Math.round(minutes));
