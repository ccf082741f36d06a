import type { BriefLean } from '../../tracker/review/index.ts';
import {
  fitEnd,
  fitStart,
  rangeAxisLine,
  rangePicture,
  ratioAxis,
  segment,
  type GlyphSet,
  type Line,
} from '../drawing/index.ts';
import { times } from '../format/index.ts';
import {
  markCells,
  piecesCells,
  ratioCells,
  ratioRangeCells,
  type HoursLayout,
} from './hours-layout.ts';

/** A class of work, a finishing schedule, a month, or (the first) all together. */
export type LeanRow = { readonly name: string; readonly lean: BriefLean };

export const notYetFromYou = 'from the finishing schedule, not yet from you';

export function ratioHeader(title: string, { isNarrow, name, picture }: HoursLayout): Line {
  const figures = isNarrow
    ? fitStart('pcs', 3) + fitStart('you take', 10)
    : fitStart('pcs', piecesCells) +
      fitStart('you take', ratioCells) +
      fitStart('range', ratioRangeCells);
  return [
    segment(`${fitEnd(title, markCells + name)}${figures} `, 'quiet'),
    ...rangeAxisLine(ratioAxis, picture),
  ];
}

export function ratioLine(
  { name, lean }: LeanRow,
  isMarked: boolean,
  layout: HoursLayout,
  glyphs: GlyphSet,
): Line {
  const { isNarrow, picture } = layout;
  const head = segment(
    (isMarked ? '> ' : '  ') + fitEnd(name, layout.name, glyphs),
    isMarked ? 'strong' : 'text',
  );
  const { ratio, range, pieces } = lean;
  if (ratio === null)
    return [head, segment(isNarrow ? '   not yet from you' : `    ${notYetFromYou}`, 'quiet')];
  const spread = range === null ? '' : `${range.low.toFixed(1)}-${range.high.toFixed(1)}`;
  const figures = isNarrow
    ? fitStart(String(pieces), 3) + fitStart(times(ratio), 10)
    : fitStart(String(pieces), piecesCells) +
      fitStart(times(ratio), ratioCells) +
      fitStart(spread, ratioRangeCells);
  return [
    head,
    segment(`${figures} `, isMarked ? 'strong' : 'text'),
    ...rangePicture(
      { low: range?.low ?? ratio, high: range?.high ?? ratio, estimate: ratio },
      ratioAxis,
      picture,
      glyphs,
    ),
  ];
}
