import { day, hour, minute, type Milliseconds } from '../time/index.ts';
import { readQuietHours, type QuietHours } from './quiet-hours.ts';

/** When hands are at work: clock times of the shop, over midnight where the end is earlier. */
type ShopHours = QuietHours;

/** Reads `8:00-18:00`, `22-6`; null where it is neither. */
export function readShopHours(text: string): ShopHours | null {
  const hours = readQuietHours(text);
  return hours === 'none' ? null : hours;
}

/** How long the shop is open on a day, by the setting; ten hours where that says nothing. */
export function openADay(chosen: string): Milliseconds {
  const hours = readShopHours(chosen);
  return hours === null ? 10 * hour : lengthOf(hours);
}

function lengthOf({ from, to }: ShopHours): Milliseconds {
  const length = sinceMidnight(to) - sinceMidnight(from);
  return length > 0 ? length : length + day;
}

function sinceMidnight(clock: string): Milliseconds {
  const [hours = '0', minutes = '0'] = clock.split(':');
  return Number(hours) * hour + Number(minutes) * minute;
}
