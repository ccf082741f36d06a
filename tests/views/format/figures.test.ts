import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  air,
  hoursRange,
  humidity,
  rangeInTable,
  rangeInWords,
  temperature,
  times,
} from '../../../src/views/format/index.ts';

describe('ranges', () => {
  it('stand apart in a sentence and close in a table', () => {
    expect(rangeInWords(26, 48)).toBe('26 to 48');
    expect(rangeInTable(25.8, 48.2)).toBe('26-48');
    expect(rangeInWords(14.8, 15.2)).toBe('15');
  });

  test.each([
    [20, 45, '20 to 45 min'],
    [480, 780, '8 to 13 h'],
    [485, 770, '8 to 13 h'],
    [62, 118, '1 to 2 h'],
    [75, 130, '1 to 2.5 h'],
    [240, 420, '4 to 7 h'],
    [25, 150, '25 min to 2.5 h'],
    [120, 120, '2 h'],
    [20, 99, '20 to 99 min'],
    [20, 100, '20 min to 2 h'],
  ])('%i to %i minutes are %s', (low, high, told) => {
    expect(hoursRange(low, high)).toBe(told);
  });

  it('of hours are never told narrower than they are', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 6000 }),
        fc.integer({ min: 70, max: 3000 }),
        (low, more) => {
          const told = /^(?:([\d.]+) to )?([\d.]+) h$/.exec(hoursRange(low, low + more));
          expect(told).not.toBeNull();
          const high = Number(told?.[2]) * 60;
          expect(told?.[1] === undefined ? high : Number(told[1]) * 60).toBeLessThanOrEqual(low);
          expect(high).toBeGreaterThanOrEqual(low + more);
        },
      ),
    );
  });

  it('of ratios have one decimal', () => {
    expect(times(1.44)).toBe('1.4 times');
    expect(times(1)).toBe('1.0 times');
  });
});

describe('air', () => {
  // Fixed points: water freezes at 0 C = 32 F and boils at 100 C = 212 F; the scales meet at -40.
  test.each([
    [0, '0 C', '32 F'],
    [100, '100 C', '212 F'],
    [-40, '-40 C', '-40 F'],
    [15.4, '15 C', '60 F'],
    [-0.3, '0 C', '31 F'],
    [-17.9, '-18 C', '0 F'],
  ])('%d degrees Celsius are %s, %s', (celsius, inC, inF) => {
    expect(temperature(celsius, 'C')).toBe(inC);
    expect(temperature(celsius, 'F')).toBe(inF);
  });

  it('has its humidity in percent, a space before the sign', () => {
    expect(humidity(64.6)).toBe('65 %');
    expect(air({ tempC: 15, rh: 65 }, 'C')).toBe('15 C 65 %');
  });
});
