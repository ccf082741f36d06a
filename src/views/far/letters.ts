import { largeFigures, spaces, width, type GlyphSet } from '../drawing/index.ts';

/** Text several rows tall; all rows are of one width. */
export type Letters = readonly string[];

/** In ASCII letters have five rows whatever is asked for: three are too few for them. */
export const letters = (text: string, rows: 3 | 5, glyphs: GlyphSet): Letters =>
  largeFigures(text, glyphs === 'ascii' ? 5 : rows, glyphs);

export const lettersWidth = (drawn: Letters): number => Math.max(0, ...drawn.map(width));

/** Side by side, the lower ones in the middle of the higher ones. */
export function beside(parts: readonly Letters[], gap: number): Letters {
  const rows = Math.max(...parts.map((part) => part.length));
  return Array.from({ length: rows }, (_, row) =>
    parts
      .map((part) => {
        const offset = Math.floor((rows - part.length) / 2);
        return part[row - offset] ?? spaces(lettersWidth(part));
      })
      .join(spaces(gap)),
  );
}

/** A word in plain letters that stands beside large ones, in their middle row. */
export const small = (word: string): Letters => [word];
