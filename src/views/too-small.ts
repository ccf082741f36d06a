import { cut, lineOf } from './drawing/index.ts';
import type { Frame } from './screen.ts';

export const fewestColumns = 32;
export const fewestRows = 10;

/** What is shown where the bench can't be: how large the terminal must be. Null where it is large enough. */
export function tooSmall(columns: number, rows: number): Frame | null {
  if (columns >= fewestColumns && rows >= fewestRows) return null;
  const words = `Make it larger: ${fewestColumns} x ${fewestRows} at least; this is ${columns} x ${rows}. Windows go on.`;
  const lines: string[] = [''];
  for (const word of words.split(' ')) {
    const last = lines.at(-1) ?? '';
    if (last !== '' && last.length + 1 + word.length > columns) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return { lines: lines.slice(0, rows).map((line) => lineOf(cut(line, columns))) };
}
