import { minute } from '../../tracker/time/index.ts';
import {
  fitEnd,
  fitStart,
  glyphSets,
  segment,
  type GlyphSet,
  type Line,
} from '../drawing/index.ts';
import { minutesSpent } from '../format/index.ts';
import { markCells } from './hours-layout.ts';

const tookCells = 10;
const shareCells = 12;

const nameCells = (columns: number): number =>
  columns < 80 ? Math.max(8, Math.min(22, columns - 26)) : 23;

export function spentHeader(title: string, columns: number): Line {
  const figures = fitStart('took', tookCells) + (columns < 80 ? '' : fitStart('of it', shareCells));
  return [segment(fitEnd(title, markCells + nameCells(columns)) + figures, 'quiet')];
}

/** One bar a kind of time, as long as its share of all hands. */
export function spentLine(
  { name, minutes }: { readonly name: string; readonly minutes: number },
  all: number,
  isMarked: boolean,
  columns: number,
  glyphs: GlyphSet,
): Line {
  const share = all > 0 ? minutes / all : 0;
  const told = columns < 80 ? '' : fitStart(`${Math.round(share * 100)} in 100`, shareCells);
  const room = columns - markCells - nameCells(columns) - tookCells - told.length - 1;
  const bar = glyphSets[glyphs].goTill.repeat(Math.max(0, Math.round(share * room)));
  return [
    segment(
      (isMarked ? '> ' : '  ') +
        fitEnd(name, nameCells(columns), glyphs) +
        fitStart(minutesSpent(Math.round(minutes) * minute), tookCells) +
        told,
      isMarked ? 'strong' : 'text',
    ),
    segment(` ${bar}`, 'strong'),
  ];
}
