import { describe, expect, test } from 'vitest';
import { day, hour } from '../../src/tracker/time/index.ts';
import {
  equilibriumMoisture,
  gapClosed,
  humidityAtRest,
  moistureAfter,
  timeConstantOf,
  timeDownTo,
} from '../../src/tracker/trade/index.ts';

const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

/**
 * Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190, 2010), Table 4-2: moisture content of wood in equilibrium
 * with stated temperature and relative humidity, in percent. Columns are relative humidity 5, 10, ... 95 %. One copy on
 * the web prints 3.0 at 110 F and 20 %; 4.0 is right.
 */
const table42: Readonly<Record<number, readonly number[]>> = {
  30: [
    1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.4, 13.5, 14.9, 16.5, 18.5,
    21.0, 24.3,
  ],
  40: [
    1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.3, 13.5, 14.9, 16.5, 18.5,
    21.0, 24.3,
  ],
  50: [
    1.4, 2.6, 3.6, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.4, 14.8, 16.4, 18.4,
    20.9, 24.3,
  ],
  60: [
    1.3, 2.5, 3.6, 4.6, 5.4, 6.2, 7.0, 7.8, 8.6, 9.4, 10.2, 11.1, 12.1, 13.3, 14.6, 16.2, 18.2,
    20.7, 24.1,
  ],
  70: [
    1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9,
    20.5, 23.9,
  ],
  80: [
    1.3, 2.4, 3.5, 4.4, 5.3, 6.1, 6.8, 7.6, 8.3, 9.1, 9.9, 10.8, 11.7, 12.9, 14.2, 15.7, 17.7, 20.2,
    23.6,
  ],
  90: [
    1.2, 2.3, 3.4, 4.3, 5.1, 5.9, 6.7, 7.4, 8.1, 8.9, 9.7, 10.5, 11.5, 12.6, 13.9, 15.4, 17.3, 19.8,
    23.3,
  ],
  100: [
    1.2, 2.3, 3.3, 4.2, 5.0, 5.8, 6.5, 7.2, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.6, 15.1, 17.0, 19.5,
    22.9,
  ],
  110: [
    1.1, 2.2, 3.2, 4.0, 4.9, 5.6, 6.3, 7.0, 7.7, 8.4, 9.2, 10.0, 11.0, 12.0, 13.2, 14.7, 16.6, 19.1,
    22.4,
  ],
  120: [
    1.1, 2.1, 3.0, 3.9, 4.7, 5.4, 6.1, 6.8, 7.5, 8.2, 8.9, 9.7, 10.6, 11.7, 12.9, 14.4, 16.2, 18.6,
    22.0,
  ],
  130: [
    1.0, 2.0, 2.9, 3.7, 4.5, 5.2, 5.9, 6.6, 7.2, 7.9, 8.7, 9.4, 10.3, 11.3, 12.5, 14.0, 15.8, 18.2,
    21.5,
  ],
};

describe('equilibrium moisture content', () => {
  test.each(Object.entries(table42))(
    'at %s F is within 0.1 points of the Wood Handbook, Table 4-2',
    (fahrenheit, row) => {
      expect(row).toHaveLength(19);
      for (const [index, printed] of row.entries()) {
        const rh = 5 * (index + 1);
        const worked = equilibriumMoisture({ tempC: celsius(Number(fahrenheit)), rh });
        expect(Math.abs(worked - printed), `${fahrenheit} F ${rh} %`).toBeLessThan(0.1);
      }
    },
  );

  test('at 20 C is what a note on Wood Handbook eq. 4-5 (FPL-GTR-282, p. 4-3) works out', () => {
    const worked = [50, 75, 85, 95].map((rh) => equilibriumMoisture({ tempC: 20, rh }).toFixed(2));
    expect(worked).toEqual(['9.27', '14.45', '18.00', '23.94']);
    expect(equilibriumMoisture({ tempC: 5, rh: 85 }).toFixed(2)).toBe('18.47');
    expect(equilibriumMoisture({ tempC: 20, rh: 100 }).toFixed(1)).toBe('28.8');
  });

  test('a wood technologist rounds it to 6, 9 and 12 % at 30, 50 and 65 % (G. Wengert, question columns)', () => {
    const rounded = [30, 50, 65].map((rh) => Math.round(equilibriumMoisture({ tempC: 21, rh })));
    expect(rounded).toEqual([6, 9, 12]);
  });

  test('is not the one of forest fires: 68 F and 70 % give 12.84 there (Simard), 13.13 here', () => {
    expect(equilibriumMoisture({ tempC: 20, rh: 70 })).toBeCloseTo(13.13, 2);
  });

  test('turned round gives the humidity again, also beyond the table', () => {
    for (const tempC of [-5, 0, 10, 21, 35, 60])
      for (let rh = 1; rh <= 99; rh += 2)
        expect(humidityAtRest(equilibriumMoisture({ tempC, rh }), tempC)).toBeCloseTo(rh, 6);
    expect(humidityAtRest(60, 20)).toBeCloseTo(100, 6);
    expect(humidityAtRest(-1, 20)).toBeCloseTo(0, 6);
  });
});

describe('drying', () => {
  test('a timelag closes 63 % of the gap (Fosberg and Deeming, USDA Forest Service RM-207)', () => {
    const closed = [1, 2, 3, 4, 5].map((times) => gapClosed(times * hour, hour).toFixed(4));
    // The first is the definition of the class; the others are powers of it.
    expect(closed).toEqual(['0.6321', '0.8647', '0.9502', '0.9817', '0.9933']);
  });

  test.each([
    [24 * hour, 10, '0.9093'],
    [24 * hour, 100, '0.2134'],
    [24 * hour, 1000, '0.0237'],
    [48 * hour, 100, '0.3812'],
    [72 * hour, 100, '0.5132'],
    [7 * day, 1000, '0.1546'],
  ])(
    'after %d ms a %d h part has closed %s of its gap (worked from the definition)',
    (ms, constant, part) => {
      expect(gapClosed(ms, constant * hour).toFixed(4)).toBe(part);
    },
  );

  test('a 1000 h log from 20 % in 20 C and 70 % (set-up of a fire-weather page; figures worked from the definition)', () => {
    const after = [1, 2, 3, 4, 5].map((times) =>
      moistureAfter(20, 12.84, times * 1000 * hour, 1000 * hour).toFixed(2),
    );
    expect(after).toEqual(['15.47', '13.81', '13.20', '12.97', '12.89']);
  });

  test('a spindle of 10 h from 18 % towards 8 % is at 10 % after 10 ln 5 hours', () => {
    const takes = timeDownTo(10, 18, 8, 10 * hour);
    expect((takes ?? 0) / hour).toBeCloseTo(16.094, 3);
    expect(timeDownTo(7, 18, 8, 10 * hour)).toBeNull();
    expect(timeDownTo(18, 18, 8, 10 * hour)).toBe(0);
  });

  test('two readings give the time constant back', () => {
    for (const constant of [hour, 10 * hour, 100 * hour]) {
      const first = { percent: 18, at: 0 };
      const second = { percent: moistureAfter(18, 8, 12 * hour, constant), at: 12 * hour };
      expect((timeConstantOf(first, second, 8) ?? 0) / constant).toBeCloseTo(1, 9);
    }
  });
});
