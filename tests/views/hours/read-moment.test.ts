import { describe, expect, it } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import {
  readMoment,
  wholeMinute,
  type CorrectedEnd,
} from '../../../src/views/hours/read-moment.ts';
import type { ShopClock } from '../../../src/views/format/index.ts';
import { at } from '../support/bench-of.ts';

const utc: ShopClock = { zone: 'UTC', hours: '24' };
const lunch: CorrectedEnd = { which: 'end', start: at('17 11:46'), end: at('17 12:31') };
const now = at('17 14:00');

const read = (text: string, given = lunch, shop = utc): number | string => {
  const reading = readMoment(text, given, now, shop);
  return reading.ok ? reading.at : reading.says;
};

describe('reading a corrected time', () => {
  it.each([
    ['12:00', '17 12:00'],
    [' 12.00 ', '17 12:00'],
    ['-15', '17 12:16'],
    ['−15', '17 12:16'],
    ['+10', '17 12:41'],
    ['-1:20', '17 11:11'],
    ['- 15 min', '17 12:16'],
    ['2:30 pm', '17 14:30'],
    ['1 pm', '17 13:00'],
    ['12:05 am', '17 00:05'],
  ])('%s is %s', (text, expected) => {
    expect(read(text)).toBe(at(expected));
  });

  it.each(['', '25:00', '12:60', '12', 'noon', '13 pm', '0 pm', '-', '--5', '-90x', '12:00:00'])(
    '"%s" is none, and it says how to write one',
    (text) => {
      expect(read(text)).toMatch(/Write 12:00, or -15 or \+10 for minutes earlier or later\.$/);
    },
  );

  it('puts a beginning on the day of the session, and moves it from where it is', () => {
    const start: CorrectedEnd = { ...lunch, which: 'start' };
    expect(read('11:30', start)).toBe(at('17 11:30'));
    expect(read('-16', start)).toBe(at('17 11:30'));
    // Later than the end: that is for the bench to refuse, not to be read as another day.
    expect(read('18:30', start)).toBe(at('17 18:30'));
  });

  it('finds the evening before for a session that ran till morning, and the morning itself', () => {
    const night: CorrectedEnd = { which: 'end', start: at('16 17:00'), end: at('17 08:00') };
    expect(read('18:10', night)).toBe(at('16 18:10'));
    expect(read('00:20', night)).toBe(at('17 00:20'));
    expect(read('07:30', night)).toBe(at('17 07:30'));
  });

  it('ends a session that is in hand still', () => {
    const open: CorrectedEnd = { which: 'end', start: at('17 11:46'), end: null };
    expect(read('12:00', open)).toBe(at('17 12:00'));
    expect(read('-30', open)).toBe(now - 30 * minute);
  });

  it('takes the half of the day that is nearer where a twelve-hour clock leaves it open', () => {
    const twelve: ShopClock = { zone: 'UTC', hours: '12' };
    expect(read('1:05', lunch, twelve)).toBe(at('17 13:05'));
    expect(read('12:20', lunch, twelve)).toBe(at('17 12:20'));
    expect(read('11:50', lunch, twelve)).toBe(at('17 11:50'));
  });

  it('of a beginning too, and takes twelve for midnight where that is meant', () => {
    const twelve: ShopClock = { zone: 'UTC', hours: '12' };
    const after: CorrectedEnd = { which: 'start', start: at('17 13:10'), end: at('17 13:40') };
    expect(read('1:05', after, twelve)).toBe(at('17 13:05'));
    const night: CorrectedEnd = { which: 'end', start: at('16 23:50'), end: at('17 00:40') };
    expect(read('12:20', night, twelve)).toBe(at('17 00:20'));
  });

  it("reads the clock of the shop's zone", () => {
    // Clocks in New York went back at 06:00 UTC on 1 November 2026 (IANA zone data: 2007 rule, first Sunday).
    const zone: ShopClock = { zone: 'America/New_York', hours: '24' };
    const given: CorrectedEnd = { which: 'end', start: at('01 14:00'), end: at('01 16:00') };
    expect(read('10:15', given, zone)).toBe(at('01 15:15'));
  });
});

it('a correction is told to the nearest minute', () => {
  expect(wholeMinute(at('17 12:31') + 29_000)).toBe(at('17 12:31'));
  expect(wholeMinute(at('17 12:31') + 31_000)).toBe(at('17 12:32'));
});
