import { describe, expect, test } from 'vitest';
import { day, hour, minute } from '../../../../src/tracker/time/index.ts';
import type { Reading } from '../../../../src/tracker/trade/index.ts';
import { airSense, usualNightLowC, type Span } from '../../../../src/tracker/windows/index.ts';
import { at } from '../../support/instants.ts';
import { labelSense } from '../../support/sense.ts';

const standard = { tempC: 23, rh: 50 };
/** Half as fast at 13 C, twice as fast at 33 C. */
const opening: Span = { ms: 4 * hour, chemistry: 'oxidative', statedFor: standard, may: 'grow' };
const closing: Span = { ...opening, may: 'shrink' };
const read = (clock: string, tempC: number, rh = 50): Reading => ({ at: at(clock), tempC, rh });
const inAir = (readings: readonly Reading[], nightLowC: number | null = null) =>
  airSense({ readings, nightLowC });

describe('readings of one span', () => {
  test('each is in force from its instant until the next', () => {
    // One hour at full pace, then half pace: 3 h of the label take 6.
    const { spanEnd } = inAir([read('7:00', 23), read('9:00', 13), read('12:30', 13)]);
    expect(spanEnd(opening, at('8:00'))).toBe(at('15:00'));
  });

  test('one that lies before the span is the one in force at its beginning', () => {
    expect(inAir([read('6:00', 23), read('7:59', 13)]).spanEnd(opening, at('8:00'))).toBe(
      at('16:00'),
    );
  });

  test('warm hours make up for cold ones, but never for more than the label asks', () => {
    const { spanEnd } = inAir([read('8:00', 13), read('10:00', 33)]);
    // 2 h at half pace leave 3 h, which take 1.5: that would be 11:30.
    expect(spanEnd(opening, at('8:00'))).toBe(at('12:00'));
    expect(spanEnd(closing, at('8:00'))).toBe(at('11:30'));
  });

  test('the first one counts back over four hours that no reading covers; before that the label', () => {
    const { spanEnd } = inAir([read('12:00', 13)]);
    // From 8:00 at half pace.
    expect(spanEnd(opening, at('9:00'))).toBe(at('17:00'));
    // An hour of the label's own until 8:00, the other three at half pace.
    expect(spanEnd(opening, at('7:00'))).toBe(at('14:00'));
  });
});

test('labels that are stated for other air are moved each by its own, though one sense is asked for all', () => {
  const readings = [read('8:00', 16, 80)];
  const together = inAir(readings);
  const stated = [
    { tempC: 23, rh: 50 },
    { tempC: 23, rh: 80 },
    { tempC: 16, rh: 50 },
  ];
  const ends = stated.map((statedFor) => {
    const span: Span = { ...opening, chemistry: 'waterborne', statedFor };
    const end = together.spanEnd(span, at('8:00'));
    expect(end).toBe(inAir(readings).spanEnd(span, at('8:00')));
    return end;
  });
  expect(new Set(ends).size).toBe(stated.length);
});

describe('hours without a reading', () => {
  test('the night low counts for an opening from four hours on, if it is worse', () => {
    const readings = [read('8:00', 23)];
    const long = { ...opening, ms: 6 * hour };
    expect(inAir(readings, 13).spanEnd(long, at('8:00'))).toBe(at('16:00'));
    expect(inAir(readings, 13).spanAir(long, at('8:00'))?.night).toEqual({
      tempC: 13,
      from: at('12:00'),
    });
    expect(inAir(readings, 23).spanAir(long, at('8:00'))?.night).toBeNull();
  });

  test('for a closing the warm reading goes on', () => {
    const readings = [read('8:00', 33)];
    const long = { ...closing, ms: 12 * hour };
    expect(inAir(readings, 3).spanEnd(long, at('8:00'))).toBe(at('14:00'));
    expect(inAir(readings, 3).spanAir(long, at('8:00'))?.night).toBeNull();
  });

  test('a new reading puts an end to it', () => {
    const readings = [read('8:00', 23), read('14:00', 23)];
    // Four hours, two at half pace, then the rest.
    expect(inAir(readings, 13).spanEnd({ ...opening, ms: 6 * hour }, at('8:00'))).toBe(at('15:00'));
  });

  test('with no reading ever it is the label', () => {
    expect(inAir([], 3).spanEnd(opening, at('8:00'))).toBe(at('12:00'));
    expect(inAir([], 3).spanAir(opening, at('8:00'))?.readings).toEqual([]);
  });
});

test.each(['glue', 'reaction'] as const)('%s keeps to the label', (chemistry) => {
  const span = { ...opening, chemistry };
  expect(inAir([read('8:00', 3)]).spanEnd(span, at('8:00'))).toBe(at('12:00'));
  expect(inAir([read('8:00', 3)]).spanAir(span, at('8:00'))).toBeNull();
});

test('how much longer a coat takes in the air of one instant', () => {
  const sense = inAir([read('8:00', 18)], 13);
  expect(sense.factorAt(opening, at('9:00'))).toBeCloseTo(2 ** 0.5, 9);
  expect(sense.factorAt(opening, at('12:00'))).toBeCloseTo(2, 9);
  expect(sense.factorAt(closing, at('9:00'))).toBe(1);
  expect(inAir([read('8:00', 28)]).factorAt(opening, at('9:00'))).toBe(1);
  expect(inAir([]).factorAt(opening, at('9:00'))).toBe(1);
});

describe('the usual night low', () => {
  const { nextClock } = labelSense;
  const night = (days: number, tempC: number): readonly Reading[] =>
    [0, 2, 5].map((hours) => ({
      at: at('23:00') + days * day + hours * hour,
      tempC: tempC + (hours === 2 ? 0 : 1),
      rh: 60,
    }));
  const noon = (days: number): Reading => ({ at: at('12:00') + days * day, tempC: 5, rh: 60 });

  test('is the middle one of the lowest of each night', () => {
    const readings = [...night(0, 9), noon(1), ...night(1, 14), noon(2), ...night(2, 11), noon(3)];
    expect(usualNightLowC(readings, nextClock)).toBe(11);
  });

  test('is the colder of two in the middle', () => {
    const readings = [9, 14, 11, 12].flatMap((tempC, days) => night(days, tempC));
    expect(usualNightLowC(readings, nextClock)).toBe(11);
  });

  test('needs three nights', () => {
    expect(usualNightLowC([...night(0, 9), ...night(1, 10)], nextClock)).toBeNull();
    expect(usualNightLowC([noon(0), noon(1), noon(2)], nextClock)).toBeNull();
    expect(usualNightLowC([], nextClock)).toBeNull();
  });

  test('forgets what is more than two weeks old', () => {
    const readings = [0, 1, 2, 20, 21, 22].flatMap((days) => night(days, days < 10 ? 0 : 12));
    expect(usualNightLowC(readings, nextClock)).toBe(12);
  });
});

test('a thousand readings cost a span no more than those it runs through', () => {
  const many = Array.from({ length: 1000 }, (_, index): Reading => ({
    at: at('8:00') + index * 15 * minute,
    tempC: 20 + (index % 7) / 2,
    rh: 50,
  }));
  const told = inAir(many).spanAir(opening, at('8:00') + 5 * day);
  expect(told?.readings.length).toBeLessThan(24);
});
