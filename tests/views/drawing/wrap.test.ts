import { expect, it } from 'vitest';
import { wrapFigures, wrapWords } from '../../../src/views/drawing/wrap.ts';

it('keeps a figure on the line of its unit', () => {
  const told = 'bleach done on 1 Oak settle: 70 min, schedule says 30 min to 2 h 00';
  for (const cells of [40, 54, 55, 62, 64, 66]) {
    const lines = wrapFigures(told, cells);
    expect(lines.join(' ')).toBe(told);
    expect(lines.every((line) => line.length <= cells && !/^(?:min|h|00)\b/.test(line))).toBe(true);
  }
  expect(wrapWords(told, 66).at(-1)).toBe('00');
  expect(wrapFigures('read at 16 C 60 % today', 10)).toEqual(['read at', '16 C 60 %', 'today']);
});
