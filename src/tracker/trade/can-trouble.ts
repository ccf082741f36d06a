import { day, type CalendarDay } from '../time/index.ts';
import type { Product } from './schedule.ts';

const midnight = (on: CalendarDay): number => Date.parse(`${on}T00:00Z`);

/**
 * What is wrong with using a can on a day, beginning with its name; null where nothing is, or nothing is known of it.
 * An old can is told, never refused: whether it still dries is for a sample board to say.
 */
export function canTrouble({ name, can }: Product, today: CalendarDay): string | null {
  if (can === undefined) return null;
  const called = can.batch === undefined ? name : `${name}, batch ${can.batch}`;
  const tryIt = 'try it on a sample board first';
  if (can.keepsTill !== undefined && today > can.keepsTill)
    return `${called}, is past its shelf life since ${can.keepsTill}: ${tryIt}`;
  if (can.openedOn === undefined || can.onceOpened === undefined) return null;
  const open = midnight(today) - midnight(can.openedOn);
  const days = Math.round(can.onceOpened / day);
  return open > can.onceOpened
    ? `${called}, was opened ${can.openedOn} and keeps ${days} days: ${tryIt}`
    : null;
}
