import { describe, expect, test } from 'vitest';
import {
  dewPointC,
  saturationPa,
  timeFactor,
  vapourPa,
  wetBulbC,
  type Climate,
} from '../../src/tracker/trade/index.ts';
import { hour, minute } from '../../src/tracker/time/index.ts';
import { airSense, type Span } from '../../src/tracker/windows/index.ts';

/** ISO 3270: the standard conditions of paint testing. */
const standard: Climate = { tempC: 23, rh: 50 };
const fromF = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

const twoPart = (statedC: number, tempC: number): number =>
  timeFactor('two-part', { tempC: statedC, rh: 50 }, { tempC, rh: 50 });

describe('two-part: twice the rate per 10 C', () => {
  test('pot life of UFGS 09971, 3.7.1.3: halves per 10 C (18 F) more, doubles per 10 C less, stated for 21 C', () => {
    expect(twoPart(21, 31)).toBeCloseTo(0.5, 9);
    expect(twoPart(21, 11)).toBeCloseTo(2, 9);
    // Polyurethane top coat, 2 h at 21 C.
    const pot: Span = {
      ms: 2 * hour,
      chemistry: 'two-part',
      statedFor: { tempC: 21, rh: 50 },
      may: 'shrink',
    };
    const warm = airSense({ readings: [{ at: 0, tempC: 31, rh: 50 }], nightLowC: null });
    expect(warm.spanEnd(pot, 0)).toBe(hour);
  });

  // US Army PS magazine 396, page 19: "room" is taken as 70 F, which it does not say. The two sources conflict: 2.3 and 1.7
  // times per 10 C, where the guide specification says 2. The law lies between them.
  test.each([
    ['polyurethane', 8, 2, 'slower'],
    ['epoxy', 15, 6, 'faster'],
  ])('pot life from room to 100 F, %s %d h to %d h: the law is %s', (_, room, hot, than) => {
    const law = twoPart(fromF(70), fromF(100));
    if (than === 'slower') expect(law).toBeGreaterThan(hot / room);
    else expect(law).toBeLessThan(hot / room);
    expect(Math.abs(Math.log(law / (hot / room)))).toBeLessThan(Math.log(1.35));
  });

  // UFGS 09971, recoat windows of two-part polyurethane over polyurethane, by the surface's temperature in F.
  const recoat = [
    { f: 65, opens: 8, closes: 48 },
    { f: 75.5, opens: 6, closes: 48 },
    { f: 85.5, opens: 4, closes: 36 },
    { f: 95.5, opens: 3, closes: 24 },
    { f: 105.5, opens: 2, closes: 12 },
    { f: 115.5, opens: 1, closes: 2 },
  ];
  const first = recoat[0] ?? { f: 65, opens: 8, closes: 48 };

  test.each(recoat.slice(0, 5))(
    'recoat opens at $f F as the table says in whole hours, within 20 %',
    (row) => {
      const law = first.opens * twoPart(fromF(first.f), fromF(row.f));
      expect(Math.abs(law / row.opens - 1)).toBeLessThan(0.2);
    },
  );

  // The table's hottest column is steeper than any one law: opens in 1 h, closes in 2. No opening is brought forward by it.
  test('at 111 to 120 F the table is faster than the law', () => {
    expect(first.opens * twoPart(fromF(first.f), fromF(115.5))).toBeGreaterThan(1);
  });

  test('closings come forward as openings do: between 71 and 110 F within 45 %', () => {
    const from = recoat[1] ?? first;
    for (const row of recoat.slice(1, 5)) {
      const law = from.closes * twoPart(fromF(from.f), fromF(row.f));
      expect(Math.abs(Math.log(law / row.closes))).toBeLessThan(Math.log(1.45));
    }
  });

  // Cure chart of an industrial two-part epoxy, hand-applied (the maker withheld), in minutes.
  const chart = [
    { f: 40, gel: 180, opens: 170, closes: 360, dry: 540 },
    { f: 50, gel: 110, opens: 100, closes: 235, dry: 360 },
    { f: 60, gel: 62, opens: 57, closes: 150, dry: 240 },
    { f: 70, gel: 52, opens: 47, closes: 116, dry: 180 },
    { f: 80, gel: 30, opens: 25, closes: 75, dry: 120 },
    { f: 90, gel: 25, opens: 20, closes: 58, dry: 90 },
    { f: 100, gel: 18, opens: 15, closes: 37, dry: 55 },
    { f: 110, gel: 16, opens: 13, closes: 31, dry: 45 },
  ];
  test.each(['gel', 'opens', 'closes', 'dry'] as const)(
    'cure chart of an epoxy over 4 to 43 C, stated for 70 F: %s within 35 %%',
    (column) => {
      const stated = chart[3] ?? { gel: 0, opens: 0, closes: 0, dry: 0 };
      for (const row of chart) {
        const law = stated[column] * twoPart(fromF(70), fromF(row.f));
        expect(Math.abs(law / row[column] - 1)).toBeLessThan(0.35);
      }
    },
  );

  test('a marine coating guide, stated for 20 C: 10 C takes twice, 30 C half', () => {
    expect(twoPart(20, 10)).toBeCloseTo(2, 9);
    expect(twoPart(20, 30)).toBeCloseTo(0.5, 9);
  });
});

describe('waterborne: water leaves by what a film that cools itself drives out', () => {
  const wetBulb = (air: Climate): number => timeFactor('waterborne', standard, air);
  const vapourDeficit = (air: Climate): number => saturationPa(air.tempC) - vapourPa(air);
  const rawDeficit = (air: Climate): number => vapourDeficit(standard) / vapourDeficit(air);
  /** Uno 1998, evaporation from a wet surface as warm as the air, without wind (from memory). */
  const uno = (air: Climate): number => unoRate(standard) / unoRate(air);
  const unoRate = ({ tempC, rh }: Climate): number => (tempC + 18) ** 2.5 * (1 - rh / 100);

  // No published table of drying time against humidity was found for waterborne furniture finishes. Three published routes
  // of physics agree where shops are warm, and part where they are cold.
  test.each([
    [20, 50],
    [20, 65],
    [22, 60],
    [23, 50],
    [23, 65],
    [25, 50],
    [25, 65],
  ])('three routes agree at %d C and %d %% within 12 %%', (tempC, rh) => {
    const air = { tempC, rh };
    for (const route of [rawDeficit, uno])
      expect(Math.abs(wetBulb(air) / route(air) - 1)).toBeLessThan(0.12);
  });

  test('at 10 C the raw deficit says half as much again as a film that cools itself: here the sources conflict', () => {
    const cold = { tempC: 10, rh: 50 };
    expect(rawDeficit(cold) / wetBulb(cold)).toBeGreaterThan(1.4);
    expect(rawDeficit(cold) / wetBulb(cold)).toBeLessThan(1.6);
  });

  // Computed with PsychroLib 1.1.1 by e_s(wet bulb) - e_a, relative to 23 C and 50 %; not published.
  test.each([
    [10, 50, 1.516],
    [15, 65, 1.863],
    [20, 65, 1.607],
    [23, 80, 2.701],
    [30, 30, 0.562],
  ])('at %d C and %d %% it takes %d times as long', (tempC, rh, factor) => {
    expect(wetBulb({ tempC, rh })).toBeCloseTo(factor, 2);
  });

  test('never more than 4 times, never less than half', () => {
    expect(wetBulb({ tempC: 5, rh: 95 })).toBe(4);
    expect(wetBulb({ tempC: 23, rh: 100 })).toBe(4);
    expect(wetBulb({ tempC: 40, rh: 5 })).toBe(0.5);
  });

  test('the wet bulb lies between dew point and air', () => {
    for (const air of [standard, { tempC: 10, rh: 80 }]) {
      expect(wetBulbC(air)).toBeGreaterThan(dewPointC(air));
      expect(wetBulbC(air)).toBeLessThan(air.tempC);
    }
  });
});

test('oxidative, stated for 23 C: six hours at 23 C and then a night at 13 C, each hour of which counts half', () => {
  const span: Span = { ms: 12 * hour, chemistry: 'oxidative', statedFor: standard, may: 'grow' };
  const hourly = Array.from({ length: 30 }, (_, index) => ({
    at: index * hour,
    tempC: index < 6 ? 23 : 13,
    rh: 50,
  }));
  expect(airSense({ readings: hourly, nightLowC: null }).spanEnd(span, 0)).toBe(18 * hour);
});

// Common practice, no source.
test.each([
  [50, 1],
  [25, 2],
  [12.5, 4],
  [5, 4],
  [80, 1],
])('moisture-cure at %d %% takes %d times as long', (rh, factor) => {
  expect(timeFactor('moisture-cure', standard, { tempC: 23, rh })).toBe(factor);
});

test('evaporative: twice per 10 C (common practice, no source), and delay only', () => {
  const times = { ms: 60 * minute, chemistry: 'evaporative', statedFor: standard } as const;
  const at = (tempC: number) => airSense({ readings: [{ at: 0, tempC, rh: 50 }], nightLowC: null });
  expect(at(13).spanEnd({ ...times, may: 'grow' }, 0)).toBe(2 * hour);
  expect(at(33).spanEnd({ ...times, may: 'grow' }, 0)).toBe(hour);
  expect(at(33).spanEnd({ ...times, may: 'shrink' }, 0)).toBe(hour);
});
