import type { PieceHours } from '../../tracker/estimate/index.ts';
import { lineOf, segment, width, type Line } from '../drawing/index.ts';
import { rangeInWords } from '../format/index.ts';
import { roleOf } from './piece-rows.ts';

/** A piece's totals where there are no columns for them: what is done, what is to go, and setup. */
export function narrowTotals(
  { done, toGo, setup, other }: PieceHours,
  columns: number,
): readonly Line[] {
  const about = `setup ${setup.about ? 'about ' : ''}${whole(setup.minutes)}`;
  const beside = other < 1 ? '' : `; other ${whole(other)}`;
  return [
    ...(done === null ? [] : [doneLine(done, columns)]),
    ...(toGo === null ? [] : [lineOf(`to go ${rangeInWords(toGo.low, toGo.high)}, 4 times in 5`)]),
    lineOf(
      widestOf([`${about}; schedule ${whole(setup.expected)}${beside}`, about + beside], columns),
      'quiet',
    ),
  ];
}

/** `done 210: inside, expected 154 to 249` */
function doneLine(
  { minutes, verdict, expected }: NonNullable<PieceHours['done']>,
  columns: number,
): Line {
  const head = `done ${whole(minutes)}: `;
  const range = rangeInWords(expected.low, expected.high);
  const room = columns - width(head + (verdict ?? ''));
  return [
    segment(head),
    segment(verdict ?? '', roleOf(verdict)),
    segment(widestOf([`, expected ${range}`, `, ${range}`], room)),
  ];
}

/** The first of several ways to say it that fits; the last one where none does. */
const widestOf = (texts: readonly string[], cells: number): string =>
  texts.find((text) => width(text) <= cells) ?? texts.at(-1) ?? '';

const whole = (minutes: number): string => String(Math.round(minutes));
