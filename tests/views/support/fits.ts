import { expect } from 'vitest';
import { lineWidth, plain } from '../../../src/views/drawing/index.ts';
import type { Frame, View } from '../../../src/views/screen.ts';
import { sizes, type Size } from './bench-of.ts';

/**
 * Draws at every size: exactly as many rows as there are, nothing in them that acts on a terminal, a list that lies
 * within them on rows of its own, and below it whatever leads out of the screen.
 */
export function fitsEverywhere(
  draw: (view: Pick<View, 'columns' | 'rows'>) => Frame,
  out: RegExp,
): void {
  for (const size of sizes) fits(draw({ columns: size[0], rows: size[1] }), size, out);
}

function fits({ lines, pick, cursor }: Frame, [columns, rows]: Size, out: RegExp): void {
  const where = `${columns}x${rows}`;
  const texts = lines.map(plain);
  expect(lines.length, where).toBe(rows);
  // eslint-disable-next-line no-control-regex -- what acts is to be absent
  expect(texts.join('\n'), where).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  expect(texts.slice(-4).join(' '), where).toMatch(out);
  if (cursor !== undefined) {
    expect(cursor.x, where).toBeLessThan(columns);
    expect(texts[cursor.y], where).toMatch(/_/);
    expect(lineWidth(lines[cursor.y] ?? []), where).toBe(columns);
  }
  if (pick === undefined) return;
  expect(pick.row + pick.height, where).toBeLessThanOrEqual(rows - 1);
  expect(pick.items.length, where).toBe(pick.height);
  for (const text of texts.slice(pick.row, pick.row + pick.height)) expect(text.trim()).toBe('');
  for (const { label } of pick.items)
    expect(lineWidth([{ text: label, role: 'text' }])).toBeLessThanOrEqual(columns - 4);
}
