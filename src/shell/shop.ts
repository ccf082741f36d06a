import type { PingSense } from '../tracker/bench/index.ts';
import type { Settings } from '../tracker/settings/index.ts';
import { instantOfClock, nextClock } from '../views/format/zone.ts';
import type { Shop } from '../views/port.ts';

/** What the machine says about where it stands, for settings left at `auto`. */
export type Whereabouts = {
  /** `auto` is the machine's own zone, which Date knows without being told its name. */
  readonly zone: string;
  /** `en-US`. */
  readonly locale: string;
};

/** Regions that read temperatures in Fahrenheit, and those that use inches (CLDR supplemental data, from memory). */
const fahrenheitRegions = new Set([
  'US',
  'BS',
  'BZ',
  'KY',
  'PW',
  'PR',
  'GU',
  'VI',
  'AS',
  'MP',
  'FM',
  'MH',
  'LR',
]);
const inchRegions = new Set(['US', 'PR', 'GU', 'VI', 'AS', 'MP', 'LR']);
const twelveHourRegions = new Set([
  'US',
  'PR',
  'CA',
  'AU',
  'NZ',
  'IN',
  'PH',
  'PK',
  'EG',
  'SA',
  'CO',
  'MY',
]);

/** Where the locale comes from, without waking Intl: the usual variables, in their order of force. */
export const localeOf = (env: Readonly<Record<string, string | undefined>>): string =>
  (env['LC_ALL'] || env['LC_MEASUREMENT'] || env['LANG'] || '').split('.')[0]?.replace('_', '-') ??
  '';

/** The shop's zone, clock and units: as chosen, else as the machine's. */
export function shopOf(settings: Settings, here: Whereabouts): Shop {
  const region = here.locale.split('-')[1] ?? '';
  return {
    zone: settings.zone === 'auto' ? here.zone : settings.zone,
    hours:
      settings.clock === 'auto' ? (twelveHourRegions.has(region) ? '12' : '24') : settings.clock,
    temperature:
      settings.temperature === 'auto'
        ? fahrenheitRegions.has(region)
          ? 'F'
          : 'C'
        : settings.temperature,
    lengths:
      settings.lengths === 'auto' ? (inchRegions.has(region) ? 'in' : 'mm') : settings.lengths,
  };
}

/** Working out edges and pings in the shop's zone, with the label's own figures. */
export const senseOf = (shop: Shop): PingSense => ({
  spanEnd: (span, from) => from + span.ms,
  nextClock: (from, time) => nextClock(from, time, shop.zone),
  instantOf: (day, time) => instantOfClock(day, time, shop.zone),
});
