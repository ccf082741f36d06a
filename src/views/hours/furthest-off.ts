import type { Held } from '../../tracker/estimate/index.ts';
import type { BriefLean, StepOff } from '../../tracker/review/index.ts';
import {
  cut,
  fitEnd,
  fitStart,
  lineOf,
  segment,
  width,
  type GlyphSet,
  type Line,
} from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import type { View } from '../screen.ts';
import type { LeanRow } from './ratio-table.ts';

/** Below so many pieces a figure is told to rest on few. */
export const fewPieces = 5;

/** What of a table rests on few pieces; null where nothing does. */
export function fewWords(rows: readonly LeanRow[]): string | null {
  const few = rows.filter(({ lean }) => lean.pieces > 0 && lean.pieces < fewPieces);
  if (few.length === 0) return null;
  if (few.length > 1 && few.length === rows.filter(({ lean }) => lean.pieces > 0).length)
    return `Fewer than ${fewPieces} pieces in each row: a hint at most.`;
  return few.length > 4
    ? `Fewer than ${fewPieces} pieces for ${few.length} of these rows: a hint at most.`
    : `Few pieces yet, a hint at most: ${few.map(({ name, lean }) => `${name} (${lean.pieces})`).join(', ')}.`;
}

/** How often the range held, what rests on few pieces, and the marked row's steps that were furthest off. */
export function belowLines(
  held: string | null,
  table: readonly LeanRow[],
  marked: BriefLean,
  rows: number,
  view: View,
): readonly Line[] {
  const { columns, theme } = view;
  const isNarrow = columns < 80;
  const few = fewWords(table);
  const told = [
    ...(held === null ? [] : wrapWords(held, columns).map((text) => lineOf(text, 'strong'))),
    ...(few === null || isNarrow
      ? []
      : wrapWords(few, columns)
          .slice(0, 2)
          .map((text) => lineOf(text, 'quiet'))),
  ];
  const most = Math.max(1, Math.min(4, view.rows - 16 - told.length + Math.max(0, 8 - rows)));
  return [
    ...(isNarrow ? [] : [lineOf('')]),
    ...told,
    // On a narrow terminal their name takes one of the lines.
    ...offLines(
      marked.steps.slice(0, isNarrow && most > 1 ? most - 1 : most),
      columns,
      theme.glyphs,
    ),
  ];
}

/** `the range held 31 of 40 times; 4 in 5 was claimed`; `imported`: so many pieces had estimates without ranges. */
export function heldWords({ held, of, claimed }: Held, imported: number): string {
  if (claimed === null)
    return imported === 0
      ? 'No range to judge yet: nothing was done and timed on a finished piece.'
      : 'No range to judge yet: imported hours claimed none.';
  const chance = Math.abs(claimed - 0.8) < 0.005 ? '4 in 5' : `${Math.round(claimed * 100)} in 100`;
  return `The range held ${held} of ${of} ${of === 1 ? 'time' : 'times'}; ${chance} was claimed.`;
}

const label = 'furthest off';

/** Steps that were furthest off their estimates, under their name; on a narrow terminal one alone goes without. */
export function offLines(
  off: readonly StepOff[],
  columns: number,
  glyphs: GlyphSet,
): readonly Line[] {
  const cells = { est: widest(off.map(estimated)), took: widest(off.map(taken)) };
  if (columns < 80)
    return [
      ...(off.length < 2 ? [] : [lineOf(`${label}:`, 'quiet')]),
      ...off.map((step) => narrowLine(step, cells, columns, glyphs)),
    ];
  const hasNotes = off.some(({ note }) => note !== null);
  return off.map((step, index) =>
    wideLine(step, index === 0, cells, offLayout(columns, hasNotes), glyphs),
  );
}

const estimated = ({ expected }: StepOff): string => String(Math.round(expected.minutes));
const taken = ({ minutes }: StepOff): string => String(Math.round(minutes));
const widest = (figures: readonly string[]): number => Math.max(0, ...figures.map(width));

type FigureCells = { readonly est: number; readonly took: number };

/** `Hall bench, strip        took 160, est 70` */
function narrowLine(
  step: StepOff,
  { est, took }: FigureCells,
  columns: number,
  glyphs: GlyphSet,
): Line {
  const figures = ` took ${fitStart(taken(step), took)}, est ${fitStart(estimated(step), est)}`;
  return [
    segment(fitEnd(`${step.piece.name}, ${step.step.name}`, columns - width(figures), glyphs)),
    segment(figures, 'quiet'),
  ];
}

type OffLayout = { readonly name: number; readonly work: number; readonly note: number };

const gap = 2;
const figureCells = 17;

/** Where nothing was noted the names have its room. */
function offLayout(columns: number, hasNotes: boolean): OffLayout {
  const room = columns - width(label) - gap - figureCells;
  if (hasNotes) {
    const [name, work] = columns < 100 ? [15, 15] : [24, 26];
    return { name, work, note: room - name - work };
  }
  const name = columns < 100 ? 18 : 24;
  return { name, work: Math.min(42, room - name), note: 0 };
}

/** `furthest off  Hall bench     strip          est 70 took 160  two layers of paint` */
function wideLine(
  step: StepOff,
  isFirst: boolean,
  { est, took }: FigureCells,
  { name, work, note }: OffLayout,
  glyphs: GlyphSet,
): Line {
  const figures = `est ${fitStart(estimated(step), est)} took ${fitStart(taken(step), took)}`;
  return [
    segment(fitEnd(isFirst ? label : '', width(label) + gap), 'quiet'),
    segment(
      `${fitEnd(step.piece.name, name - 1, glyphs)} ${fitEnd(step.step.name, work - 1, glyphs)} `,
    ),
    segment(fitEnd(figures, figureCells)),
    segment(step.note === null ? '' : cut(step.note.text, note, glyphs), 'quiet'),
  ];
}
