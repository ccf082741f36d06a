import { spaces, width } from './cells.ts';
import { figureDots, strokeFigures } from './figure-dots.ts';
import type { GlyphSet } from './glyphs.ts';
import { visible } from './visible.ts';

/**
 * Text in letters of several rows, all rows of one width. Blocks: five rows with two columns a dot, three rows with half
 * blocks. ASCII: five rows of `#` with one column a dot, three rows for digits only. Small letters become large ones.
 * A text with a sign that is not drawn stands in plain letters in the middle row.
 */
export function largeFigures(text: string, rows: 3 | 5, glyphs: GlyphSet): readonly string[] {
  const pictures = glyphs === 'ascii' && rows === 3 ? strokeFigures : figureDots;
  const figures = [...text.toUpperCase()].map((sign) => pictures[sign]);
  if (!figures.every((figure) => figure !== undefined)) return inMiddleRow(text, rows);
  const dots =
    figures[0]?.map((_, row) => figures.map((figure) => figure[row] ?? '').join(' ')) ?? [];
  if (dots.length === 0) return Array.from({ length: rows }, () => '');
  if (glyphs === 'ascii') return dots;
  return rows === 5 ? dots.map(doubled) : inHalfBlocks(dots);
}

function inMiddleRow(text: string, rows: number): readonly string[] {
  const shown = visible(text);
  const middle = Math.floor(rows / 2);
  return Array.from({ length: rows }, (_, row) => (row === middle ? shown : spaces(width(shown))));
}

const doubled = (dots: string): string => dots.replaceAll(' ', '  ').replaceAll('#', '██');

/** Two rows of dots in one row of cells. */
function inHalfBlocks(dots: readonly string[]): readonly string[] {
  const halves = [dots.slice(0, 2), dots.slice(2, 4), dots.slice(4)];
  return halves.map(([upper = '', lower = '']) =>
    [...upper].map((dot, column) => halfBlock(dot === '#', lower[column] === '#')).join(''),
  );
}

const halfBlock = (isUpper: boolean, isLower: boolean): string =>
  isUpper ? (isLower ? '█' : '▀') : isLower ? '▄' : ' ';
