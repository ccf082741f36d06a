import { cut, width } from './cells.ts';

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
