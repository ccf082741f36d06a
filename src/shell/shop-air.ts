import type { PingSense } from '../tracker/bench/index.ts';
import { readNightLow, type Settings } from '../tracker/settings/index.ts';
import type { Reading } from '../tracker/trade/index.ts';
import { airSense, usualNightLowC } from '../tracker/windows/index.ts';
import type { Shop } from '../views/port.ts';
import { senseOf } from './shop.ts';

/**
 * Working out edges in the shop's zone and in its air. Windows are kept for as long as this stays the same object, so a
 * new one is made when a reading comes in, and only then or when a setting changes.
 */
export function senseIn(shop: Shop, settings: Settings, readings: readonly Reading[]): PingSense {
  const label = senseOf(shop);
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
