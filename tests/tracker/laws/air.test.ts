import fc from 'fast-check';
import { expect, test } from 'vitest';
import { windowsOfPiece } from '../../../src/tracker/bench/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import type { Chemistry, Climate, Reading } from '../../../src/tracker/trade/index.ts';
import { airSense, type EdgeSense, type Span } from '../../../src/tracker/windows/index.ts';
import { morning } from '../support/instants.ts';
import { labelSense } from '../support/sense.ts';
import { breaches } from './breaches.ts';
import { tried } from './law.ts';
import { pressAll, presses } from './presses.ts';

const chemistries: readonly Chemistry[] = [
  'waterborne',
  'oxidative',
  'evaporative',
  'two-part',
  'moisture-cure',
  'glue',
  'reaction',
];

/** Everything that a person can have read, and more. */
const climate: fc.Arbitrary<Climate> = fc.record({
  tempC: fc.integer({ min: -40, max: 60 }),
  rh: fc.integer({ min: 1, max: 100 }),
});
const readings: fc.Arbitrary<readonly Reading[]> = fc
  .array(
    fc.tuple(fc.integer({ min: -20 * hour, max: 60 * hour }), climate).map(([offset, air]) => ({
      at: morning + offset,
      ...air,
    })),
    { maxLength: 12 },
  )
  .map((all) => all.toSorted((one, other) => one.at - other.at));
const nightLow = fc.option(fc.integer({ min: -10, max: 25 }));

const span: fc.Arbitrary<Span> = fc.record({
  ms: fc.integer({ min: 0, max: 100 * hour }),
  chemistry: fc.constantFrom(...chemistries),
  statedFor: fc.record({
    tempC: fc.integer({ min: 15, max: 30 }),
    rh: fc.integer({ min: 30, max: 80 }),
  }),
  may: fc.constantFrom('grow', 'shrink'),
});

test('whatever the readings, an opening is never earlier and a closing never later than the label’s', () => {
  let moved = 0;
  fc.assert(
    fc.property(span, readings, nightLow, (any, read, nightLowC) => {
      const label = morning + any.ms;
      const end = airSense({ readings: read, nightLowC }).spanEnd(any, morning);
      if (end !== label) moved += 1;
      expect(Number.isInteger(end)).toBe(true);
      expect(end).toBeGreaterThanOrEqual(any.may === 'shrink' ? morning : label);
      if (any.may === 'shrink') expect(end).toBeLessThanOrEqual(label);
    }),
    tried(2000),
  );
  expect(moved).toBeGreaterThan(300);
});

test('what is told of a span ends when the span ends, and knows only readings that there are', () => {
  fc.assert(
    fc.property(span, readings, nightLow, (any, read, nightLowC) => {
      const sense = airSense({ readings: read, nightLowC });
      const told = sense.spanAir(any, morning);
      if (told === null) return;
      expect(told.end).toBe(sense.spanEnd(any, morning));
      for (const reading of told.readings) expect(read).toContain(reading);
      if (told.night !== null && any.may === 'grow')
        expect(told.night.from).toBeLessThanOrEqual(told.end);
    }),
    tried(500),
  );
});

test('of two instants the later one never has the earlier end', () => {
  fc.assert(
    fc.property(
      span,
      readings,
      nightLow,
      fc.integer({ min: 0, max: 20 * hour }),
      (any, read, nightLowC, later) => {
        const { spanEnd } = airSense({ readings: read, nightLowC });
        // Rounded to the millisecond.
        expect(spanEnd(any, morning + later)).toBeGreaterThanOrEqual(spanEnd(any, morning) - 1);
      },
    ),
    tried(1000),
  );
});

test('more readings of the same air change nothing', () => {
  /** At most four hours apart, from the beginning on: nowhere does a night low come in. */
  const often = fc.array(fc.integer({ min: minute, max: 4 * hour }), {
    minLength: 60,
    maxLength: 60,
  });
  fc.assert(
    fc.property(span, climate, nightLow, often, often, (any, air, nightLowC, few, many) => {
      const read = (gaps: readonly number[]): readonly Reading[] => {
        let at = morning;
        return gaps.map((gap) => ({ at: (at += gap) - gap, ...air }));
      };
      const steady = airSense({ readings: read(few.map(() => 4 * hour)), nightLowC });
      const both = airSense({
        readings: [...read(few.map(() => 4 * hour)), ...read(many)].toSorted(
          (one, other) => one.at - other.at,
        ),
        nightLowC,
      });
      const short = { ...any, ms: any.ms / 20 };
      expect(Math.abs(both.spanEnd(short, morning) - steady.spanEnd(short, morning))).toBeLessThan(
        2,
      );
    }),
    tried(500),
  );
});

test('with any readings every window is in one state at every instant, in a legal order', () => {
  let begun = 0;
  fc.assert(
    fc.property(
      presses,
      readings,
      nightLow,
      fc.constantFrom(...chemistries),
      (list, read, nightLowC, chemistry) => {
        const air = airSense({ readings: read, nightLowC });
        const dried = (any: Span): Span => ({
          chemistry,
          statedFor: { tempC: 23, rh: 50 },
          ...any,
        });
        const sense: EdgeSense = {
          ...labelSense,
          spanEnd: (any, from) => air.spanEnd(dried(any), from),
        };
        for (const { after: bench, outcome } of pressAll(list, 1)) {
          const piece =
            outcome.ok && outcome.piece !== null ? bench.pieces.get(outcome.piece) : undefined;
          if (piece === undefined) continue;
          const windows = windowsOfPiece(piece, bench.sessions, sense);
          begun += windows.length;
          expect(windows.flatMap(breaches)).toEqual([]);
        }
      },
    ),
    tried(80),
  );
  expect(begun).toBeGreaterThan(500);
});
