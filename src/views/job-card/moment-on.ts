import type { Instant } from '../../tracker/time/index.ts';
import { clock, shopDay, shortDay, type ShopClock } from '../format/index.ts';

/** A clock time, with its day where that is not the row's. */
export function momentOn(at: Instant, row: Instant, shop: ShopClock): string {
  const on = shopDay(at, shop.zone);
  return on === shopDay(row, shop.zone) ? clock(at, shop) : `${shortDay(on)} ${clock(at, shop)}`;
}
