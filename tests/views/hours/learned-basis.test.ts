import { expect, it } from 'vitest';
import type { Bench } from '../../../src/tracker/bench/index.ts';
import { hoursOfFinished, hoursOfPiece } from '../../../src/tracker/estimate/index.ts';
import { estimatorFrom, notTaught, teachBench } from '../../../src/tracker/learning/index.ts';
import { day } from '../../../src/tracker/time/index.ts';
import { aboutRow } from '../../../src/views/hours/about-row.ts';
import { pieceRows } from '../../../src/views/hours/piece-rows.ts';
import { inventShop, monday, scheduleOf, step } from '../../tracker/estimate/invented-shop.ts';

const schedule = scheduleOf([
  step('strip', { stepClass: 'strip', minutes: { typical: 90, low: 50, high: 200 } }),
]);

/** Why the first row of a new piece expects what it does, after so many that took 150 minutes. */
function reasons(pieces: number, next = schedule): string {
  const shop = inventShop();
  for (let i = 0; i < pieces; i++)
    shop.work(shop.add(`Piece ${i}`, schedule, monday), i * 300, i * 300 + 150);
  const now = monday + 9 * day;
  const id = shop.add('Next', next, now);
  const folded = shop.bench();
  const bench: Bench = {
    ...folded,
    estimator: estimatorFrom(() => teachBench(notTaught, folded).minutes),
  };
  const piece = shop.piece(id);
  const [row] = pieceRows(hoursOfPiece(bench, piece, now), 'step');
  if (row === undefined) throw new Error('no row');
  return aboutRow(
    row,
    { bench, piece },
    hoursOfFinished([bench], now),
    { lengths: 'mm' },
    false,
  ).join(' ');
}

it('says what the schedule says, how these hands run, and after how many pieces', () => {
  expect(reasons(6)).toMatch(
    /^Why 1[34]\d for strip: schedule says 90, your strip runs 1\.[56] times, 6 pieces\.$/,
  );
});

it('says that nothing came from these hands before the first', () => {
  expect(reasons(0)).toBe("Why 90 for strip: the finishing schedule's 90. Not yet from you.");
});

it('claims no work of a class that was never done: only how these hands run over all', () => {
  const staining = scheduleOf([
    step('stain', { stepClass: 'stain', minutes: { typical: 30, low: 20, high: 60 } }),
  ]);
  expect(reasons(6, staining)).toMatch(
    /^Why \d\d for stain: schedule says 30, you run 1\.\d times over all, no stain yet\.$/,
  );
});
