import type { Instant } from '../../tracker/time/index.ts';
import { dayWords, daysBetween, shortDay, weekdayOf } from './days.ts';
import { shopDay, wallTime, type Zone } from './zone.ts';

/** How the shop tells the time. */
export type ShopClock = { readonly zone: Zone; readonly hours: '12' | '24' };

/** `14:29` or `2:29 pm`, as it stands in a sentence. */
export function clock(instant: Instant, shop: ShopClock): string {
  const wall = wallTime(instant, shop.zone);
  const minutes = String(wall.minute).padStart(2, '0');
  if (shop.hours === '24') return `${String(wall.hour).padStart(2, '0')}:${minutes}`;
  return `${wall.hour % 12 || 12}:${minutes} ${wall.hour < 12 ? 'am' : 'pm'}`;
}

/** Cells that a clock time takes in a column. */
export const clockCells = (shop: ShopClock): number => (shop.hours === '24' ? 5 : 8);

/** A clock time right-aligned in its column. */
export const clockCell = (instant: Instant, shop: ShopClock): string =>
  clock(instant, shop).padStart(clockCells(shop));

/** `Tue 24 Nov` */
export const day = (instant: Instant, shop: ShopClock): string =>
  dayWords(shopDay(instant, shop.zone));

/** `Tue` */
export const weekday = (instant: Instant, shop: ShopClock): string =>
  weekdayOf(shopDay(instant, shop.zone));

/** From here on a weekday's name could mean another week. */
const daysToldByWeekday = 6;

type Nearness = 'today' | 'this week' | 'further';

/** Whether an instant is told by its clock time alone, with its weekday, or by its date. */
export function nearness(instant: Instant, now: Instant, shop: ShopClock): Nearness {
  const days = Math.abs(daysBetween(shopDay(now, shop.zone), shopDay(instant, shop.zone)));
  if (days === 0) return 'today';
  return days <= daysToldByWeekday ? 'this week' : 'further';
}

/** In a table, clocks under clocks: `18:30`, `08:55 Wed`, `06:19 14 Dec`. */
export const clockOrDay = (instant: Instant, now: Instant, shop: ShopClock): string =>
  [clock(instant, shop), dayNear(instant, now, shop)].filter(Boolean).join(' ');

/** In a sentence: `18:30`, `Wed 08:55`, `14 Dec`. So far ahead the clock time decides nothing. */
export function whenInWords(instant: Instant, now: Instant, shop: ShopClock): string {
  const near = dayNear(instant, now, shop);
  switch (nearness(instant, now, shop)) {
    case 'today':
      return clock(instant, shop);
    case 'this week':
      return `${near} ${clock(instant, shop)}`;
    case 'further':
      return near;
  }
}

/** The day as short as it can be told: nothing for today, `Wed`, `14 Dec`. */
export function dayNear(instant: Instant, now: Instant, shop: ShopClock): string {
  const on = shopDay(instant, shop.zone);
  switch (nearness(instant, now, shop)) {
    case 'today':
      return '';
    case 'this week':
      return weekdayOf(on);
    case 'further':
      return shortDay(on);
  }
}

/** As it is spoken by a screen reader: `18 30`, `2 29 pm`. */
export const clockAloud = (instant: Instant, shop: ShopClock): string =>
  clock(instant, shop).replace(':', ' ');
