import type { Instant } from '../../time/index.ts';
import type { Climate } from '../../trade/climate.ts';
import { airMoves, timeFactor } from '../../trade/air/index.ts';
import type { AirSense, Span, SpanAir } from '../model.ts';
import { readingHoldsFor, type ShopAir } from './shop-air.ts';
import { airFrom, lastNotAfter, type Running } from './stretches-of-air.ts';

type MovedSpan = Required<Pick<Span, 'chemistry' | 'statedFor' | 'may'>>;

/**
 * Equivalent time is summed over the readings until it makes up the label's. One-sided: what may grow never ends before
 * the label says, and what may shrink never after it.
 */
export function airSense(air: ShopAir): AirSense {
  const paces = new Map<string, Map<number, Map<number, number>>>();

  /** Paces are kept for as long as the readings stay the same: a bench asks for few laws and few airs, many times. */
  const paceOf = ({ chemistry, statedFor }: MovedSpan): Running['paceIn'] => {
    const law = `${chemistry} ${statedFor.tempC} ${statedFor.rh}`;
    const known = within(paces, law, () => new Map<number, Map<number, number>>());
    return (climate: Climate) =>
      within(
        within(known, climate.tempC, () => new Map<number, number>()),
        climate.rh,
        () => 1 / timeFactor(chemistry, statedFor, climate),
      );
  };
  const runningOf = (span: MovedSpan): Running => ({
    paceIn: paceOf(span),
    worse: span.may === 'grow' ? Math.min : Math.max,
  });

  const sum = (span: Span & MovedSpan, from: Instant): SpanAir => {
    const label = from + span.ms;
    let at = from;
    let left = span.ms;
    const counted = new Set<number>();
    let nightFrom: Instant | null = null;
    for (const { ends, pace, reading, isNight } of airFrom(from, air, runningOf(span))) {
      if (left <= 0) break;
      if (reading !== null) counted.add(reading);
      if (isNight) nightFrom ??= at;
      const takes = left / pace;
      if (at + takes <= ends) {
        at += takes;
        left = 0;
      } else {
        left -= (ends - at) * pace;
        at = ends;
      }
    }
    const end = Math.round(at + Math.max(0, left));
    return {
      end: span.may === 'grow' ? Math.max(label, end) : Math.min(label, end),
      readings: [...counted].flatMap((place) => air.readings[place] ?? []),
      night:
        nightFrom === null || air.nightLowC === null
          ? null
          : { tempC: air.nightLowC, from: nightFrom },
    };
  };

  const labelTime = (span: Span & MovedSpan, from: Instant, to: Instant): number => {
    const asRead = { paceIn: paceOf(span), worse: (read: number) => read };
    let [at, ran] = [from, 0];
    for (const { ends, pace } of airFrom(
      from,
      { readings: air.readings, nightLowC: null },
      asRead,
    )) {
      const till = Math.min(to, ends);
      ran += Math.max(0, till - at) * pace;
      at = Math.max(at, till);
      if (at >= to) break;
    }
    return ran + Math.max(0, to - at);
  };

  return {
    labelTime: (span, from, to) => (isMoved(span) ? labelTime(span, from, to) : to - from),
    spanEnd: (span, from) => (isMoved(span) ? sum(span, from).end : from + span.ms),
    spanAir: (span, from) => (isMoved(span) ? sum(span, from) : null),
    factorAt: (span, at) => {
      const reading = air.readings[lastNotAfter(air.readings, at)];
      if (!isMoved(span) || reading === undefined) return 1;
      const { paceIn, worse } = runningOf(span);
      const pace = paceIn(reading);
      const isOld = at - reading.at >= readingHoldsFor && air.nightLowC !== null;
      const counts = isOld
        ? worse(pace, paceIn({ tempC: air.nightLowC ?? reading.tempC, rh: reading.rh }))
        : pace;
      return span.may === 'grow' ? Math.max(1, 1 / counts) : Math.min(1, 1 / counts);
    },
  };
}

/** Whether the shop's air has a say in a span at all. */
const isMoved = (span: Span): span is Span & MovedSpan =>
  span.chemistry !== undefined &&
  span.statedFor !== undefined &&
  span.may !== undefined &&
  airMoves(span.chemistry, span.may);

function within<Key, Value>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  let value = known.get(key);
  if (value === undefined) known.set(key, (value = make()));
  return value;
}
