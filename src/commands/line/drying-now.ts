import type { MilestoneDrying } from '../../tracker/learning/index.ts';
import type { Look } from './look.ts';

/** How many times as long it takes in the air of the last reading; null where none was taken, or air has no say. */
export function timesNow(
  { span }: MilestoneDrying,
  { readings, sense, settings, now }: Look,
): number | null {
  if (!settings.air || readings.length === 0 || sense.factorAt === undefined) return null;
  return sense.factorAt(span, now);
}
