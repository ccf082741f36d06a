import type { Held } from '../../tracker/estimate/index.ts';
import type { BriefLean, StepOff } from '../../tracker/review/index.ts';
import { cut, fitEnd, lineOf, segment, spaces, width, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import type { View } from '../screen.ts';
import type { LeanRow } from './ratio-table.ts';

/** Below so many pieces a figure is told to rest on few. */
export const fewPieces = 5;

/** What of a table rests on few pieces; null where nothing does. */
export function fewWords(rows: readonly LeanRow[]): string | null {
  const few = rows.filter(({ lean }) => lean.pieces > 0 && lean.pieces < fewPieces);
  if (few.length === 0) return null;
  return few.length > 4
    ? `Fewer than ${fewPieces} pieces for ${few.length} of these rows: a hint at most.`
    : `Few pieces yet, a hint at most: ${few.map(({ name, lean }) => `${name} (${lean.pieces})`).join(', ')}.`;
}

/** How often the range held, what rests on few pieces, and the marked row's steps that were furthest off. */
export function belowLines(
  held: Held | null,
  table: readonly LeanRow[],
  marked: BriefLean,
  rows: number,
  view: View,
): readonly Line[] {
  const { columns } = view;
  const isNarrow = columns < 80;
  const few = fewWords(table);
  const told = [
    ...(held === null
      ? []
      : wrapWords(heldWords(held), columns).map((text) => lineOf(text, 'strong'))),
    ...(few === null || isNarrow
      ? []
      : wrapWords(few, columns)
          .slice(0, 2)
          .map((text) => lineOf(text, 'quiet'))),
  ];
  const most = Math.max(1, Math.min(4, view.rows - 16 - told.length + Math.max(0, 8 - rows)));
  const off = marked.steps.slice(0, most);
  return [
    ...(isNarrow ? [] : [lineOf('')]),
    ...told,
    ...off.map((step, index) => offLine(step, index === 0, view)),
  ];
}

/** `the range held 31 of 40 times; 4 in 5 was claimed` */
export function heldWords({ held, of, claimed }: Held): string {
  if (claimed === null)
    return 'No range to judge yet: nothing was done and timed on a finished piece.';
  const chance = Math.abs(claimed - 0.8) < 0.005 ? '4 in 5' : `${Math.round(claimed * 100)} in 100`;
  return `The range held ${held} of ${of} ${of === 1 ? 'time' : 'times'}; ${chance} was claimed.`;
}

/** `furthest off  Hall bench     strip          est 70 took 160  two layers of paint` */
function offLine(
  { piece, step, expected, minutes, note }: StepOff,
  isFirst: boolean,
  view: View,
): Line {
  const { columns, theme } = view;
  const est = `est ${Math.round(expected.minutes)}`;
  const took = `took ${Math.round(minutes)}`;
  if (columns < 80) {
    const figures = ` ${took}, ${est}`;
    return [
      segment(fitEnd(`${piece.name}, ${step.name}`, columns - width(figures), theme.glyphs)),
      segment(figures, 'quiet'),
    ];
  }
  const label = 'furthest off  ';
  const name = columns < 100 ? 15 : 24;
  const work = columns < 100 ? 15 : 26;
  const left = columns - width(label) - name - work - 17;
  return [
    segment(isFirst ? label : spaces(width(label)), 'quiet'),
    segment(
      `${fitEnd(piece.name, name - 1, theme.glyphs)} ${fitEnd(step.name, work - 1, theme.glyphs)} `,
    ),
    segment(fitEnd(`${est} ${took}`, 17)),
    segment(note === null ? '' : cut(note.text, left, theme.glyphs), 'quiet'),
  ];
}
