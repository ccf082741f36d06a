import { hour, type Instant } from '../../tracker/time/index.ts';
import {
  readingHoldsFor,
  type CountedSpan,
  type OwnTime,
  type Span,
  type SpanAir,
} from '../../tracker/windows/index.ts';
import { air, temperature } from '../format/index.ts';
import { whenInWords } from '../format/index.ts';
import { labelLength } from '../parts/label-length.ts';
import type { Shop } from '../port.ts';

/** A figure that the air moved by less than a twentieth is told as the label has it. */
const worthTelling = 0.05;

/**
 * The label's figure, and how many times that it came to in the shop's air: `2 h x 1.9 for 15 C 65 %`,
 * `12 h, yours 1.4 times from 5 coats, x 1.1 for 15 C`, `2 h x 1.4 over 3 readings, night low 12 C counted day and night from 17:40 till the next reading`, `2 h, no reading`.
 */
export function spanWords(
  { span, lasts, own, air: counted }: CountedSpan,
  now: Instant,
  shop: Shop,
): string {
  const label = [labelLength(span.ms), ...ownWords(span, own)].join(', ');
  if (counted === null) return label;
  const { readings } = counted;
  const [only] = readings;
  if (only === undefined) return `${label}, no reading`;
  const unmoved = own?.ms ?? span.ms;
  const factor = unmoved === 0 ? 1 : lasts / unmoved;
  const moved =
    Math.abs(factor - 1) < worthTelling
      ? ''
      : `${own === null ? '' : ','} x ${factor.toFixed(1)} ${
          readings.length === 1
            ? `for ${air(only, shop.temperature)}`
            : `over ${readings.length} readings`
        }`;
  return [label + moved, ...ageWords(counted, now, shop)].join(', ');
}

/** `yours 1.4 times from 5 coats`: what checks have taught stands in for the label's figure. */
function ownWords(span: Span, own: OwnTime | null): readonly string[] {
  if (own === null) return [];
  const times = own.ms / span.ms;
  const told = times.toFixed(Math.abs(times - 1) < worthTelling ? 2 : 1);
  const yours = `yours ${told} times from ${own.coats} coats`;
  return own.ms < span.ms ? [yours, 'sooner than the label'] : [yours];
}

/** What stood in for a reading that was too old, and from when. */
function ageWords({ readings, night, end }: SpanAir, now: Instant, shop: Shop): readonly string[] {
  const last = readings.at(-1);
  if (last === undefined) return [];
  const until = Math.min(now, end);
  const age = until - last.at;
  const old = age >= readingHoldsFor ? [`reading ${Math.floor(age / hour)} h old`] : [];
  if (night === null) return old;
  const low = `night low ${temperature(night.tempC, shop.temperature)} counted day and night`;
  return old.length > 0
    ? [...old, `${low} till the next`]
    : [`${low} from ${whenInWords(night.from, now, shop)} till the next reading`];
}
