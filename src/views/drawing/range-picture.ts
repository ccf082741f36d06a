import { glyphSets, type GlyphSet } from './glyphs.ts';
import { merged, type Line, type Role, type Segment } from './line.ts';
import { cellOnAxis, type RangeAxis } from './range-axis.ts';

export type RangePicture = {
  readonly low: number;
  readonly high: number;
  readonly estimate: number;
  /** What it came to; absent where there is none yet. */
  readonly actual?: number;
};

/** `├──┼●───┤` on the axis: the range, the estimate in it, what it came to. Of two in one cell the later named is seen. */
export function rangePicture(
  { low, high, estimate, actual }: RangePicture,
  axis: RangeAxis,
  width: number,
  glyphs: GlyphSet,
): Line {
  if (width <= 0) return [];
  const signs = glyphSets[glyphs];
  const cells: Segment[] = Array.from({ length: width }, () => ({ text: ' ', role: 'text' }));
  const at = (value: number): number => cellOnAxis(value, axis, width);
  const draw = (cell: number, sign: string, role: Role): void => {
    if (cell < 0) cells[0] = { text: signs.short, role };
    else if (cell >= width) cells[width - 1] = { text: signs.beyond, role };
    else cells[cell] = { text: sign, role };
  };
  for (let cell = Math.max(0, at(low)); cell <= Math.min(width - 1, at(high)); cell += 1) {
    cells[cell] = { text: signs.rangeLine, role: 'quiet' };
  }
  draw(at(low), signs.rangeLow, 'quiet');
  draw(at(high), signs.rangeHigh, 'quiet');
  draw(at(estimate), signs.estimate, 'text');
  if (actual !== undefined) draw(at(actual), signs.actual, 'strong');
  return merged(cells);
}

/** One bar for what it came to, with the estimate marked on it: `██████│██`, `████  │`. */
export function actualBar(
  { estimate, actual }: { readonly estimate: number; readonly actual: number },
  axis: RangeAxis,
  width: number,
  glyphs: GlyphSet,
): Line {
  if (width <= 0) return [];
  const signs = glyphSets[glyphs];
  const mark = Math.min(width - 1, Math.max(0, cellOnAxis(estimate, axis, width)));
  const end = cellOnAxis(actual, axis, width);
  const bar = signs.goTill.repeat(Math.min(width, Math.max(0, end + 1))).padEnd(width);
  const cells = [...bar].map((sign, cell): Segment => {
    if (cell === mark) return { text: signs.now, role: 'text' };
    if (cell === width - 1 && end >= width) return { text: signs.beyond, role: 'strong' };
    return { text: sign, role: 'strong' };
  });
  return merged(cells);
}
