import type { Caution } from '../../tracker/cautions/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { whenInWords, type ShopClock } from './clock.ts';

/** `2 and 6 tacky till 15:10: sand outside`. */
export function cautionWords(
  { says, until, then }: Caution,
  now: Instant,
  shop: ShopClock,
): string {
  const till = until === undefined ? '' : ` till ${whenInWords(until, now, shop)}`;
  return `${says}${till}${then === undefined ? '' : `: ${then}`}`;
}
