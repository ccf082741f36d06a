import { expect, test } from 'vitest';
import { lineWidth, plain } from '../../../src/views/drawing/index.ts';
import { cautionLines } from '../../../src/views/piece/cautions.ts';
import type { View } from '../../../src/views/screen.ts';

const view = { columns: 80, theme: { glyphs: 'blocks' } } as View;
const short = 'Gloves.';
const long =
  'Fumes: outside, or fans that blow out; nobody else near, no spark, no heater, no laptop beside it.';

const told = (brief: readonly string[]): readonly string[] =>
  cautionLines({ all: brief, full: [], brief, isDeadly: false }, view).map((line) => {
    expect(lineWidth(line)).toBeLessThanOrEqual(80);
    return plain(line);
  });

test('one line tells of the rest, and also where a single one is cut', () => {
  expect(told([short])).toEqual(['caution  Gloves.']);
  expect(told([short, long, short])).toEqual(['caution  Gloves. (2 more: c)']);
  expect(told([long])).toEqual([expect.stringMatching(/^caution {2}Fumes: .*… \(whole: c\)$/)]);
  expect(told([long, short])).toEqual([expect.stringMatching(/… \(1 more: c\)$/)]);
});
