import {
  dryWithin,
  type Air,
  type MoistureFinding,
  type MoistureReference,
  type MoistureTrend,
} from '../../tracker/bench/index.ts';
import type { Reading } from '../../tracker/trade/index.ts';
import type { TemperatureUnit } from '../../tracker/settings/index.ts';
import { hour, type Instant } from '../../tracker/time/index.ts';
import { air as airWords } from './air.ts';
import { whenInWords, type ShopClock } from './clock.ts';

type Shop = ShopClock & { readonly temperature: TemperatureUnit };

/** `12.5 %` */
export const moisturePercent = (percent: number): string => `${tenths(percent)} %`;

const tenths = (percent: number): string => String(Number(percent.toFixed(1)));

/** The shop's air as last read, as a finding wants it. */
export const latestAir = (readings: readonly Reading[]): Air | null => {
  const reading = readings.at(-1);
  return reading === undefined
    ? null
    : { tempC: reading.tempC, rh: reading.rh, readAt: reading.at };
};

/**
 * What a finding comes to, in sentences: the figures and the verdict, what makes the meter read high, and when it will
 * be dry enough. `part` is the part's name.
 */
export function moistureWords(
  finding: MoistureFinding,
  part: string | null,
  now: Instant,
  shop: Shop,
): readonly string[] {
  const { wood, reference, saltsFrom, wettedBy, trend } = finding;
  const when = (at: Instant): string => whenInWords(at, now, shop);
  const read = `${part === null ? '' : `${part}: `}wood ${moisturePercent(wood.percent)} ${when(wood.at)}`;
  if (wettedBy !== null) return [`${read}, before ${wettedBy.name} wetted it: read it again`];
  if (reference === null)
    return [
      `${read}; nothing to hold it against: read an untouched spot too, or note the shop's air`,
    ];
  return [
    `${read}, ${referenceWords(reference, when, shop)}: ${verdictWords(finding, reference)}`,
    ...saltsWords(saltsFrom?.name ?? null, reference),
    ...(trend === null ? [] : [trendWords(trend, wood.percent, when)]),
  ];
}

function referenceWords(
  reference: MoistureReference,
  when: (at: Instant) => string,
  shop: Shop,
): string {
  const rest = moisturePercent(reference.percent);
  return reference.by === 'untouched'
    ? `untouched ${rest} ${when(reference.reading.at)}`
    : `${rest} by the air, ${airWords(reference.air, shop.temperature)} read ${when(reference.air.readAt)}`;
}

function verdictWords(
  { isDryEnough, over }: MoistureFinding,
  { percent }: MoistureReference,
): string {
  if (isDryEnough === true) return 'dry enough to coat';
  return `${tenths(over ?? 0)} over, dry enough to coat at ${moisturePercent(percent + dryWithin)}`;
}

function saltsWords(from: string | null, { by }: MoistureReference): readonly string[] {
  if (from === null) return [];
  const high = `what is left of ${from} makes the meter read high`;
  return [by === 'untouched' ? `${high}: go by the difference` : `${high}: read an untouched spot`];
}

function trendWords(trend: MoistureTrend, percent: number, when: (at: Instant) => string): string {
  const { since } = trend;
  if (trend.is === 'not falling')
    return `it does not fall: ${moisturePercent(since.percent)} ${when(since.at)}, ${moisturePercent(percent)} now`;
  const { at, earliest, latest } = trend;
  // Minutes would claim more than a meter knows; the range is rounded outwards.
  const likely = when(Math.round(at / hour) * hour);
  const from = when(Math.floor(earliest / hour) * hour);
  const until = latest === null ? 'or much later' : `to ${when(Math.ceil(latest / hour) * hour)}`;
  return `about ${likely} at this rate; ${from} ${until} by the meter's error`;
}
