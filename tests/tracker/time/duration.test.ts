import fc from 'fast-check';
import { expect, test } from 'vitest';
import { day, hour, minute, readDuration, second } from '../../../src/tracker/time/index.ts';

test.each([
  ['35', 35 * minute],
  ['35 min', 35 * minute],
  ['35min', 35 * minute],
  ['35 m', 35 * minute],
  ['  35  MIN ', 35 * minute],
  ['1:20', 80 * minute],
  ['0:05', 5 * minute],
  ['48:00', 2 * day],
  ['2 h', 2 * hour],
  ['2h', 2 * hour],
  ['2.5 h', 150 * minute],
  ['2,5 h', 150 * minute],
  ['1 h 20', 80 * minute],
  ['1 h 20 min', 80 * minute],
  ['1h20', 80 * minute],
  ['3 d', 3 * day],
  ['1 d 12 h', 36 * hour],
  ['0.5', 30 * second],
  ['366 d', 366 * day],
])('reads %j', (text, ms) => {
  expect(readDuration(text)).toEqual({ ok: true, ms });
});

test.each([
  ['', /no length of time given/i],
  ['   ', /no length of time given/i],
  ['-5', /"-5" is no length of time/],
  ['+5', /no length of time/],
  ['90x', /"x" is no unit of time/],
  ['1:99', /99 minutes in its hour; 59 is the most/],
  ['1:60', /60 minutes in its hour/],
  ['1:2:3', /no length of time/],
  ['0', /no time at all/],
  ['0:00', /no time at all/],
  ['0 h 0', /no time at all/],
  ['0.000001', /no time at all/],
  ['367 d', /longer than a year/],
  ['9999999999999999 h', /longer than a year/],
  ['20 min 1 h', /out of order/],
  ['1 h 1 h', /out of order/],
  ['5 constructor', /"constructor" is no unit of time/],
  ['1e3', /"e" is no unit of time/],
  ['1,000 min', /write large figures without a comma/],
  ['.5 h', /no length of time/],
  ['half an hour', /no length of time/],
  ['35 min ago', /no unit of time|no length of time/],
  ['NaN', /no length of time/],
  ['Infinity', /no length of time/],
])('refuses %j and shows how to write it', (text, words) => {
  const reading = readDuration(text);
  expect(reading.ok).toBe(false);
  if (reading.ok) return;
  expect(reading.says).toMatch(words);
  expect(reading.says).toContain('Write 35, 35 min, 1:20, 2 h or 3 d.');
});

test('never throws, and gives a whole number of milliseconds between none and a year', () => {
  const typed = fc.oneof(
    fc.string(),
    fc.string({ unit: fc.constantFrom(...'0123456789.,: -+hdmin'), maxLength: 12 }),
  );
  fc.assert(
    fc.property(typed, (text) => {
      const reading = readDuration(text);
      if (reading.ok) {
        expect(Number.isInteger(reading.ms)).toBe(true);
        expect(reading.ms).toBeGreaterThan(0);
        expect(reading.ms).toBeLessThanOrEqual(366 * day);
      } else {
        expect(reading.says).toMatch(/\.$/);
      }
    }),
    { numRuns: 500 },
  );
});

test('reads hours and minutes alike, however they are joined', () => {
  fc.assert(
    fc.property(fc.nat({ max: 200 }), fc.nat({ max: 59 }), (hours, minutes) => {
      fc.pre(hours + minutes > 0);
      const expected = { ok: true, ms: hours * hour + minutes * minute };
      expect(readDuration(`${hours}:${String(minutes).padStart(2, '0')}`)).toEqual(expected);
      expect(readDuration(`${hours} h ${minutes}`)).toEqual(expected);
      expect(readDuration(`${hours}h${minutes}min`)).toEqual(expected);
    }),
    { numRuns: 200 },
  );
});
