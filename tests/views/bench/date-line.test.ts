import { expect, test } from 'vitest';
import { standingsAt, type PingSense } from '../../../src/tracker/bench/index.ts';
import { dateLine } from '../../../src/views/bench/date-line.ts';
import { plain } from '../../../src/views/drawing/index.ts';
import { afternoon, at, sense, snapshotOf, viewOf } from '../support/bench-of.ts';

const now = at('24 14:29');
const reading = { at: at('24 13:40'), tempC: 15, rh: 65 };

/** Row 1 of the afternoon, where a coat takes that many times as long as its label says. */
function row(factor: number, columns = 80, more: Parameters<typeof snapshotOf>[1] = {}): string {
  const slow: PingSense = { ...sense, factorAt: () => factor };
  const snapshot = snapshotOf(afternoon().bench(), { readings: [reading], sense: slow, ...more });
  const view = { ...viewOf(snapshot, now), columns };
  return plain(dateLine(view, standingsAt(snapshot.bench, now, slow)));
}

test('tells what the air does to the coats that are drying', () => {
  expect(row(1.9)).toMatch(
    /^14:29 {2}Tue 24 Nov +15 C {2}65 % {2}dew 8 C {2}coats dry 1\.9 x as long {2}read 13:40$/,
  );
  expect(row(1.02)).toMatch(/ dew 8 C {2}read 13:40$/);
});

test('in the units of the shop', () => {
  const shop = { ...snapshotOf(afternoon().bench()).shop, temperature: 'F' } as const;
  expect(row(1.9, 80, { shop })).toContain('59 F  65 %  dew 47 F  coats dry 1.9 x as long  read');
});

test('says that a reading is old, and leaves out what has no room, never the reading', () => {
  const old = [{ ...reading, at: at('22 09:00') }];
  expect(row(1.9, 80, { readings: old })).toMatch(/coats x 1\.9 {2}read Sun 09:00, old: c$/);
  expect(row(1.9, 46, { readings: [{ ...reading, at: at('24 09:00') }] })).toMatch(
    /^14:29 Tue 24 Nov +15 C 65 % at 09:00, old: c$/,
  );
  expect(row(1.9, 40)).toMatch(/^14:29 Tue 24 Nov +15 C 65 % at 13:40$/);
  for (const columns of [30, 40, 80, 81, 120]) {
    expect(row(1.9, columns, { readings: old }).length).toBeLessThanOrEqual(columns);
  }
});
