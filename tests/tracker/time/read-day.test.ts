import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, test } from 'vitest';
import { readDay } from '../../../src/tracker/time/index.ts';
import { dayWords, fullDay, shortDay } from '../../../src/views/format/index.ts';

const today = '2026-11-24'; // A Tuesday.

const read = (text: string, on = today): string => {
  const reading = readDay(text, on);
  return reading.ok ? reading.day : reading.says;
};

const hint = 'Write 28 Nov, 2026-11-28, Sat, tomorrow or in 3 days.';

test.each([
  ['28 Nov', '2026-11-28'],
  ['Nov 28', '2026-11-28'],
  ['28. November', '2026-11-28'],
  ['28th nov', '2026-11-28'],
  ['28 Nov 2027', '2027-11-28'],
  ['November 28, 2027', '2027-11-28'],
  ['Sat 28 Nov', '2026-11-28'],
  ['Saturday, 28 Nov 2026', '2026-11-28'],
  ['2026-11-28', '2026-11-28'],
  ['2026-11-8', '2026-11-08'],
  ['Sat', '2026-11-28'],
  ['saturday', '2026-11-28'],
  ['wed', '2026-11-25'],
  ['today', '2026-11-24'],
  ['Tomorrow', '2026-11-25'],
  ['in 3 days', '2026-11-27'],
  ['3 days', '2026-11-27'],
  ['in a week', '2026-12-01'],
  ['in two weeks', '2026-12-08'],
  ['24 Nov', '2026-11-24'],
  ['  sept 3 ', '2027-09-03'],
])('reads %j on Tue 24 Nov 2026', (text, day) => {
  expect(read(text)).toBe(day);
});

test("a weekday's name never means today, and a date that has passed is next year's", () => {
  expect(read('Tue')).toBe('2026-12-01');
  expect(read('23 Nov')).toBe('2027-11-23');
  expect(read('1 Jan', '2026-12-31')).toBe('2027-01-01');
});

test('29 Feb without a year is read only where one is near', () => {
  expect(read('29 Feb', '2027-06-01')).toBe('2028-02-29');
  expect(read('29 Feb')).toBe(`no 29 Feb this year or next: put the year to it. ${hint}`);
  expect(read('29 Feb 2028')).toBe('2028-02-29');
});

test.each([
  ['', `no day given. ${hint}`],
  ['soon', `"soon" is no day. ${hint}`],
  ['next sat', `"next sat" is no day. ${hint}`],
  ['28', `"28" is no day. ${hint}`],
  ['28 Nov 26', `"28 Nov 26" is no day. ${hint}`],
  ['11/12', `"11/12" may be read two ways: write the month as a word. ${hint}`],
  ['11.12.2026', `"11.12.2026" may be read two ways: write the month as a word. ${hint}`],
  ['2026-02-30', `"2026-02-30" is on no calendar. ${hint}`],
  ['31 Nov', `"31 Nov" is on no calendar. ${hint}`],
  ['Fri 28 Nov', `2026-11-28 is a Saturday, no Friday. ${hint}`],
  ['in 99999 days', `"in 99999 days" is more than ten years ahead. ${hint}`],
])('refuses %j', (text, says) => {
  expect(read(text)).toBe(says);
});

const days = fc
  .integer({ min: 0, max: 40_000 })
  .map((count) => Temporal.PlainDate.from('2000-01-01').add({ days: count }));

test('counts days and weekdays as the Temporal reference does', () => {
  fc.assert(
    fc.property(days, fc.integer({ min: 0, max: 3660 }), (from, count) => {
      expect(read(`in ${count} days`, from.toString())).toBe(from.add({ days: count }).toString());
      const names = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
      const then = from.add({ days: 1 + (count % 7) });
      expect(read(names[then.dayOfWeek - 1] ?? '', from.toString())).toBe(then.toString());
    }),
  );
});

test('reads back every way in which the screens write a day', () => {
  fc.assert(
    fc.property(days, fc.integer({ min: 0, max: 364 }), (from, count) => {
      const then = from.add({ days: count }).toString();
      for (const written of [then, shortDay(then), dayWords(then), fullDay(then)])
        expect(read(written, from.toString())).toBe(then);
    }),
  );
});

test('never fails, whatever is typed', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      expect(read(text)).not.toBe('');
    }),
  );
});
