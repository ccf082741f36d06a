import { cut, inPieces, width } from './cells.ts';

/** Text broken between words into lines of at most so many cells. A word that is longer than a line is cut. */
export function wrapWords(text: string, cells: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && width(last) + 1 + width(word) <= cells)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(cut(word, cells));
  }
  return lines;
}

/** The same for what must be read in full, such as the path of a folder: a longer word goes on in the next line. */
export const wrapWhole = (text: string, cells: number): readonly string[] =>
  wrapWords(
    text
      .split(' ')
      .flatMap((word) => (width(word) <= cells ? [word] : inPieces(word, cells)))
      .join(' '),
    cells,
  );

/** A space at which no line breaks. */
export const noBreak = '\u00a0';

/** Text in lines of at most so many cells, broken only where it may be; the spaces are plain again. */
export const wrapKept = (text: string, cells: number): readonly string[] =>
  wrapWords(text, cells).map((line) => line.replaceAll(noBreak, ' '));

/** The same, where a figure stays on the line of its unit: `20 min`, `1 h 40`, `60 %`. */
export const wrapFigures = (text: string, cells: number): readonly string[] =>
  wrapKept(text.replaceAll(beforeUnit, noBreak), cells);

const beforeUnit = /(?<=\d) (?=(?:min|h|[CF])\b|%)|(?<=\d h) (?=\d\d\b)/g;
