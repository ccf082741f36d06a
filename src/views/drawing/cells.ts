import stringWidth from 'string-width';
import { glyphSets, type GlyphSet } from './glyphs.ts';
import { visible } from './visible.ts';

/**
 * Characters that take one cell each and join with nothing: printable ASCII, Latin, general punctuation, boxes and
 * blocks. Rows of a screen hold little else, and are measured every second.
 */
const oneCellEach =
  /^[\x20-\x7e\u00a1-\u00ac\u00ae-\u02ff\u2010-\u2027\u2030-\u203b\u2500-\u25fc]*$/;

/** Cells of a terminal that a text takes, as `visible` would send it. */
export function width(text: string): number {
  if (oneCellEach.test(text)) return text.length;
  return stringWidth(visible(text), { countAnsiEscapeCodes: true });
}

/** The text in at most so many cells; one that is longer ends with `…`. Nothing wider than a cell is split. */
export function cut(text: string, cells: number, glyphs: GlyphSet = 'blocks'): string {
  const shown = visible(text);
  if (width(shown) <= cells) return shown;
  if (cells <= 0) return '';
  const mark = glyphSets[glyphs].cut;
  if (oneCellEach.test(shown)) return shown.slice(0, cells - 1).trimEnd() + mark;
  let kept = '';
  let taken = 0;
  for (const { segment } of graphemes(shown)) {
    taken += width(segment);
    if (taken > cells - 1) break;
    kept += segment;
  }
  return kept.trimEnd() + mark;
}

/** The whole text in pieces of at most so many cells, at least one; only a character that is wider is by itself. */
export function inPieces(text: string, cells: number): readonly string[] {
  const pieces: string[] = [''];
  for (const { segment } of graphemes(visible(text))) {
    const last = pieces.at(-1) ?? '';
    if (last === '' || width(last + segment) <= cells) pieces[pieces.length - 1] = last + segment;
    else pieces.push(segment);
  }
  return pieces;
}

/** Spaces after it up to so many cells; longer text stays as it is. */
export const padEnd = (text: string, cells: number): string =>
  visible(text) + spaces(cells - width(text));

/** Spaces before it. */
export const padStart = (text: string, cells: number): string =>
  spaces(cells - width(text)) + visible(text);

/** Exactly so many cells: cut, or padded after it. */
export const fitEnd = (text: string, cells: number, glyphs: GlyphSet = 'blocks'): string =>
  padEnd(cut(text, cells, glyphs), cells);

/** Exactly so many cells: cut, or padded before it. */
export const fitStart = (text: string, cells: number, glyphs: GlyphSet = 'blocks'): string =>
  padStart(cut(text, cells, glyphs), cells);

export const spaces = (cells: number): string => ' '.repeat(Math.max(0, cells));

let segmenter: Intl.Segmenter | undefined;

const graphemes = (text: string): Intl.Segments =>
  (segmenter ??= new Intl.Segmenter()).segment(text);
