import { expect, it } from 'vitest';
import { hoursOfFinished } from '../../../src/tracker/estimate/index.ts';
import { finishedHours } from '../../../src/views/hours/finished-memo.ts';
import { at } from '../support/bench-of.ts';
import { inventedWork } from './invented-work.ts';

const now = at('24 14:00');

it('keeps what was worked out as long as nothing changed, and works it out anew when something did', () => {
  const { shop, bench: hallBench } = inventedWork();
  const past = { bench: shop.bench(), problems: [] };
  const first = finishedHours(past.bench, null, now);
  expect(first).toEqual(hoursOfFinished([past.bench], now));
  expect(finishedHours(past.bench, null, now + 20_000)).toBe(first);
  shop.act({ do: 'put back on bench', piece: hallBench }, now);
  const changed = shop.bench();
  const later = finishedHours(changed, past, now);
  expect(later.pieces).toHaveLength(3);
  expect(later).toEqual(hoursOfFinished([changed, past.bench], now));
  expect(finishedHours(changed, past, now)).toBe(later);
  expect(finishedHours(changed, null, now)).not.toBe(later);
});
