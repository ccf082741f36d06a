import { lineOf, width, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';

/** `Enter: next   Esc: no piece`: what keys do, as many to a line as fit. */
export const keyHints = (hints: readonly string[], columns: number, gap = 2): readonly Line[] =>
  broken(hints, columns, gap).map((line) => lineOf(line, 'quiet'));

/** The same in at most so many lines: the last hint, which leads out of the screen, stays, others before it go. */
export function fewKeyHints(
  hints: readonly string[],
  columns: number,
  most: number,
): readonly Line[] {
  const out = hints.slice(-1);
  for (let kept = hints.length - 1; kept > 0; kept -= 1) {
    const lines = keyHints([...hints.slice(0, kept), ...out], columns);
    if (lines.length <= most) return lines;
  }
  return keyHints(out, columns);
}

function broken(hints: readonly string[], columns: number, gap: number): readonly string[] {
  const lines: string[] = [];
  for (const hint of hints) {
    const last = lines.at(-1);
    const joined = last === undefined ? hint : `${last}${' '.repeat(gap)}${hint}`;
    if (last !== undefined && width(joined) <= columns) lines[lines.length - 1] = joined;
    else lines.push(...wrapWords(hint, columns));
  }
  return lines;
}
