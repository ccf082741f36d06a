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
  const laws = new Map<string, PacesOfReadings>();

  /** Kept for as long as the readings stay the same: a bench asks for few laws and the same readings, many times. */
  const pacesOf = ({ chemistry, statedFor }: MovedSpan): PacesOfReadings => {
    const law = `${chemistry} ${statedFor.tempC} ${statedFor.rh}`;
    let paces = laws.get(law);
    if (paces === undefined) {
      paces = pacesOfReadings(air, (climate) => 1 / timeFactor(chemistry, statedFor, climate));
      laws.set(law, paces);
    }
    return paces;
  };
  const runningOf = (span: MovedSpan): Running => ({
    ...pacesOf(span),
    worse: span.may === 'grow' ? Math.min : Math.max,
  });

  const sum = (span: Span & MovedSpan, from: Instant): SpanAir => {
    const label = from + span.ms;
    let at = from;
    let left = span.ms;
    let [firstRead, lastRead] = [0, -1];
    let nightFrom: Instant | null = null;
    for (const { ends, pace, reading, isNight } of airFrom(from, air.readings, runningOf(span))) {
      if (left <= 0) break;
      if (reading !== null) {
        if (lastRead < 0) firstRead = reading;
        lastRead = reading;
      }
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
      readings: air.readings.slice(firstRead, lastRead + 1),
      night:
        nightFrom === null || air.nightLowC === null
          ? null
          : { tempC: air.nightLowC, from: nightFrom },
    };
  };

  const labelTime = (span: Span & MovedSpan, from: Instant, to: Instant): number => {
    const asRead = { ...pacesOf(span), worse: (read: number) => read };
    let [at, ran] = [from, 0];
    for (const { ends, pace } of airFrom(from, air.readings, asRead)) {
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
      const place = lastNotAfter(air.readings, at);
      const reading = air.readings[place];
      if (!isMoved(span) || reading === undefined) return 1;
      const { paceRead, paceAtNight, worse } = runningOf(span);
      const pace = paceRead(place);
      const isOld = at - reading.at >= readingHoldsFor;
      const counts = isOld ? worse(pace, paceAtNight(place)) : pace;
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

type PacesOfReadings = Pick<Running, 'paceRead' | 'paceAtNight'>;

/** The paces of one law by the place of a reading, each worked out when it is first asked for. */
function pacesOfReadings(air: ShopAir, paceIn: (climate: Climate) => number): PacesOfReadings {
  const read: number[] = [];
  const atNight: number[] = [];
  const readingAt = (place: number): Climate => {
    const reading = air.readings[place];
    if (reading === undefined) throw new Error(`there is no reading ${place}`);
    return reading;
  };
  const paceRead = (place: number): number => (read[place] ??= paceIn(readingAt(place)));
  return {
    paceRead,
    paceAtNight: (place) =>
      air.nightLowC === null
        ? paceRead(place)
        : (atNight[place] ??= paceIn({ tempC: air.nightLowC, rh: readingAt(place).rh })),
  };
}
