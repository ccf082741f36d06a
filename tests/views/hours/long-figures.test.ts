import { describe, expect, it } from 'vitest';
import { hoursOfPiece } from '../../../src/tracker/estimate/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { plain } from '../../../src/views/drawing/index.ts';
import { pieceLayout } from '../../../src/views/hours/hours-layout.ts';
import { pieceRows } from '../../../src/views/hours/piece-rows.ts';
import { axisOf, pieceLine, totalLines } from '../../../src/views/hours/piece-table.ts';
import { inventShop, monday, scheduleOf, step } from '../../tracker/estimate/invented-shop.ts';

/** A large carved piece: one long step done, one to go. */
function large() {
  const shop = inventShop();
  const minutes = { typical: 733, low: 513, high: 1101 };
  const schedule = scheduleOf([
    step('strip', { stepClass: 'strip', name: 'strip, insides and back first', minutes }),
    step('sand', { stepClass: 'sand bare, first grit', name: 'sand 120', minutes }),
    step('carve', { stepClass: 'other', minutes: { typical: 1200, low: 1002, high: 1583 } }),
  ]);
  const id = shop.add('Hall cupboard', schedule, monday);
  shop.work(id, 0, 700);
  return hoursOfPiece(shop.bench(), shop.piece(id), monday + 800 * minute);
}

describe.each([80, 120])('hours of a piece that takes days, at %i columns', (columns) => {
  it('keeps estimate and range apart, whole, in rows and totals', () => {
    const hours = large();
    const layout = pieceLayout(columns);
    const rows = pieceRows(hours, 'step');
    const lines = [
      ...rows.map((row) => pieceLine(row, false, axisOf(rows), layout, 'blocks')),
      ...totalLines(hours, layout),
    ].map(plain);
    expect(lines.every((line) => line.length <= columns)).toBe(true);
    expect(lines.map((line) => / (\d+) +(\d+-\d+) /.exec(line)?.slice(1))).toEqual([
      ['733', '513-1101'],
      ['733', '513-1101'],
      ['1200', '1002-1583'],
      ['733', '513-1101'],
      [String(Math.round(hours.toGo?.minutes ?? 0)), expect.stringMatching(/^\d{4}-\d{4}$/)],
      undefined,
    ]);
  });
});
