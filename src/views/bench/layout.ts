import { barWidth } from '../drawing/index.ts';
import { clockCells, type ShopClock } from '../format/index.ts';

/** Where things stand on the bench, by the terminal's width. The time bar is `bar` cells wide at column `barAt`. */
export type BenchLayout = {
  readonly shape: 'wide' | 'normal' | 'narrow';
  readonly name: number;
  readonly state: number;
  readonly clock: number;
  readonly bar: number;
  readonly barAt: number;
};

/** Marker, number in brackets, and a space. */
export const tagCells = 5;
const leftCells = 6;

export function benchLayout(columns: number, shop: ShopClock): BenchLayout {
  const bar = barWidth(columns);
  const clock = clockCells(shop);
  if (columns < 80) {
    const name = columns - tagCells - bar - (bar > 0 ? 0 : 1);
    return {
      shape: 'narrow',
      name,
      state: columns - tagCells - clock - leftCells - 3,
      clock,
      bar,
      barAt: tagCells + name,
    };
  }
  const gaps = 3;
  const state = columns >= 120 ? 18 : 16;
  const barAt = columns - bar;
  // A twelve-hour clock takes its cells from the name.
  const name = barAt - tagCells - state - clock - leftCells - gaps;
  return { shape: columns >= 120 ? 'wide' : 'normal', name, state, clock, bar, barAt };
}
