import type { PingSense } from '../tracker/bench/index.ts';
import { readNightLow, readQuietHours, type Settings } from '../tracker/settings/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import type { Reading } from '../tracker/trade/index.ts';
import { airSense, usualNightLowC } from '../tracker/windows/index.ts';
import type { Shop } from '../views/port.ts';
import { senseOf } from './shop.ts';

/** A clock time comes round once a day: an instant lies in quiet hours where their end comes sooner than their beginning. */
function withQuietHours(sense: PingSense, chosen: string): PingSense {
  const hours = readQuietHours(chosen);
  if (hours === null || hours === 'none') return sense;
  const { from, to } = hours;
  const quietTill = (at: Instant): Instant | null => {
    const ends = sense.nextClock(at, to);
    const begins = sense.nextClock(at, from);
    const isQuiet = begins === at || (ends > at && ends < begins);
    return isQuiet ? ends : null;
  };
  return { ...sense, quietTill };
}

/**
 * Working out edges in the shop's zone and in its air. Windows are kept for as long as this stays the same object, so a
 * new one is made when a reading comes in, and only then or when a setting changes.
 */
export function senseIn(shop: Shop, settings: Settings, readings: readonly Reading[]): PingSense {
  const label = withQuietHours(senseOf(shop), settings.quiet);
  if (!settings.air) return label;
  const chosen = readNightLow(settings.nightLow) ?? 'auto';
  const nightLowC =
    chosen === 'auto'
      ? usualNightLowC(readings, label.nextClock)
      : chosen === 'none'
        ? null
        : chosen;
  return { ...label, ...airSense({ readings, nightLowC }) };
}
