import type { Standing } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { opensAt } from '../../tracker/windows/index.ts';
import { whenInWords, type ShopClock } from './clock.ts';

/** `light use from Sun 06:10`: of a piece that cures, where that is still to come; else empty. */
export function lightUseWords({ windows }: Standing, now: Instant, shop: ShopClock): string {
  const opens = windows
    .filter(({ rule }) => rule.milestone === 'light use')
    .map((window) => opensAt(window) ?? now);
  // Of several coats the last one's counts.
  const from = Math.max(now, ...opens);
  return from > now ? `light use from ${whenInWords(from, now, shop)}` : '';
}
