import { wrapWords } from '../drawing/wrap.ts';

const noBreak = '\u00a0';

/** Words that no line break may part: `16 C 60 %`, `3 h 50`. */
export const keptTogether = (text: string): string => text.replaceAll(' ', noBreak);

/** Text in lines of at most so many cells, broken only where it may be; the spaces are plain again. */
export const wrapKept = (text: string, cells: number): readonly string[] =>
  wrapWords(text, cells).map((line) => line.replaceAll(noBreak, ' '));
