import type { BriefOutcome } from '../../tracker/review/index.ts';
import { hour, minute } from '../../tracker/time/index.ts';
import {
  fitEnd,
  fitStart,
  minutesAxis,
  rangeAxisLine,
  rangePicture,
  segment,
  type GlyphSet,
  type Line,
  type RangeAxis,
} from '../drawing/index.ts';
import { minutesSpent, rangeInWords } from '../format/index.ts';
import { markCells, verdictCells } from './hours-layout.ts';
import { roleOf } from './piece-rows.ts';

const claimedCells = 18;
const tookCells = 9;
const tellsHoursFrom = 100;
const minutesPerHour = hour / minute;

/** Cells of the name and of the picture; a narrow terminal leaves the claimed range to the picture. */
function cellsOf(columns: number): { name: number; picture: number; isNarrow: boolean } {
  const isNarrow = columns < 80;
  const name = isNarrow ? Math.max(8, Math.min(22, columns - 30)) : columns < 100 ? 21 : 34;
  const figures = (isNarrow ? 0 : claimedCells) + tookCells + verdictCells;
  return { name, picture: Math.max(0, columns - markCells - name - figures - 1), isNarrow };
}

/** One axis for all pieces, so that they can be compared by eye; told in hours where its ticks are. */
export function outcomesAxis(outcomes: readonly BriefOutcome[]): RangeAxis {
  const axis = minutesAxis(
    Math.max(1, ...outcomes.flatMap(({ expected, minutes }) => [expected.high, minutes])),
  );
  const inHours = axis.ticks.every(({ at }) => at % minutesPerHour === 0);
  return inHours
    ? { ...axis, ticks: axis.ticks.map(({ at }) => ({ at, label: `${at / minutesPerHour} h` })) }
    : axis;
}

export function outcomeHeader(title: string, axis: RangeAxis, columns: number): Line {
  const { name, picture, isNarrow } = cellsOf(columns);
  const figures =
    (isNarrow ? '' : fitStart('claimed then', claimedCells)) +
    fitStart('took', tookCells) +
    ' '.repeat(verdictCells + 1);
  return [
    segment(fitEnd(title, markCells + name) + figures, 'quiet'),
    ...rangeAxisLine(axis, picture),
  ];
}

/** To the minute, as the verdict is: rounded hours would hold what the range didn't. */
const claimedWords = (low: number, high: number): string =>
  high < tellsHoursFrom
    ? `${rangeInWords(low, high)} min`
    : `${minutesSpent(Math.round(low) * minute)} to ${minutesSpent(Math.round(high) * minute)}`;

/** The range as it was claimed then, and where the piece came out. */
export function outcomeLine(
  { piece, expected, minutes, verdict }: BriefOutcome,
  isMarked: boolean,
  axis: RangeAxis,
  columns: number,
  glyphs: GlyphSet,
): Line {
  const { name, picture, isNarrow } = cellsOf(columns);
  const role = isMarked ? 'strong' : 'text';
  const { low, high } = expected;
  return [
    segment((isMarked ? '> ' : '  ') + fitEnd(piece.name, name, glyphs), role),
    segment(isNarrow ? '' : fitStart(claimedWords(low, high), claimedCells), 'quiet'),
    segment(fitStart(minutesSpent(Math.round(minutes) * minute), tookCells), role),
    segment(` ${fitEnd(verdict ?? '', verdictCells - 1)} `, roleOf(verdict)),
    ...rangePicture(
      { low, high, estimate: expected.minutes, actual: minutes },
      axis,
      picture,
      glyphs,
    ),
  ];
}
