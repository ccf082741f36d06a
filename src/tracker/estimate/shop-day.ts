import { day, type Instant, type Milliseconds } from '../time/index.ts';

/**
 * When hands are at work, on a clock that begins when the shop opens on the first day: from then on for so long, every
 * day.
 */
export type ShopDay = { readonly open: Milliseconds };

/** When the shop opens next after an instant. */
export const nextOpening = (at: Instant): Instant => (Math.floor(at / day) + 1) * day;

/** How long the shop is still open; nought or less after hours. */
const openLeft = (at: Instant, { open }: ShopDay): Milliseconds => open - (at % day);

/**
 * When work of a length can begin, from an instant on. Work that can be left for the night begins while any of the day
 * is left; other work where all of it fits, unless no day is long enough for it.
 */
export function workBegins(
  from: Instant,
  length: Milliseconds,
  mayRest: boolean,
  shopDay: ShopDay,
): Instant {
  const left = openLeft(from, shopDay);
  const fits = length <= left || (left > 0 && (mayRest || length > shopDay.open));
  return fits || from % day === 0 ? from : nextOpening(from);
}

/** When work that begins while the shop is open ends, with its nights left out. */
export function workEnds(begins: Instant, length: Milliseconds, shopDay: ShopDay): Instant {
  const left = openLeft(begins, shopDay);
  if (length <= left) return begins + length;
  const rest = length - left;
  const nights = Math.ceil(rest / shopDay.open);
  return (Math.floor(begins / day) + nights) * day + (rest - (nights - 1) * shopDay.open);
}

/** How many days of work it takes to get to an instant: it lies on the second day where that is 2. */
export const daysTill = (at: Instant): number => Math.max(1, Math.ceil(at / day));
