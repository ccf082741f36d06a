import { expect, test } from 'vitest';
import { movePastPieces } from '../../src/shell/move-past.ts';
import { day, hour } from '../../src/tracker/time/index.ts';
import { openWriter, newFolder, valueOf } from '../persist/places.ts';
import { inventShop, scheduleOf, step } from '../tracker/estimate/invented-shop.ts';

test('a piece goes into the year in which it left by the clock of the shop, whenever it is moved', async () => {
  const store = await openWriter(newFolder());
  const shop = inventShop();
  // An hour before the new year in New York; in Greenwich it has begun.
  const leaves = Date.UTC(2027, 0, 1, 4);
  const id = shop.add('Desk', scheduleOf([step('wax')]), leaves - day);
  shop.act({ do: 'take off bench', piece: id }, leaves);
  valueOf(store.change(() => ({ append: { bench: shop.facts() }, result: null })));
  movePastPieces(store, 'America/New_York', leaves + 23 * hour);
  expect(store.historyYears()).toEqual([]);
  movePastPieces(store, 'America/New_York', leaves + 3 * day);
  expect(store.historyYears()).toEqual([2026]);
});
