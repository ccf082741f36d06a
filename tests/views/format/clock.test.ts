import { describe, expect, it, test } from 'vitest';
import {
  clock,
  clockAloud,
  clockCell,
  clockCells,
  clockOrDay,
  day,
  dayWords,
  daysBetween,
  fullDay,
  shortDay,
  weekday,
  weekdayOf,
  whenInWords,
  type ShopClock,
} from '../../../src/views/format/index.ts';

const shop: ShopClock = { zone: 'Europe/London', hours: '24' };
const twelve: ShopClock = { zone: 'Europe/London', hours: '12' };
const at = (iso: string): number => Date.parse(iso);
const now = at('2026-11-24T14:29:20Z');

describe('a clock time', () => {
  test.each([
    ['2026-11-24T14:29:59Z', '14:29', ' 2:29 pm'],
    ['2026-11-24T00:00Z', '00:00', '12:00 am'],
    ['2026-11-24T12:05Z', '12:05', '12:05 pm'],
    ['2026-11-24T08:05Z', '08:05', ' 8:05 am'],
    // Summer time.
    ['2026-07-01T23:10Z', '00:10', '12:10 am'],
  ])('%s is %s, or %s', (instant, of24, of12) => {
    expect(clock(at(instant), shop)).toBe(of24);
    expect(clockCell(at(instant), shop)).toBe(of24);
    expect(clock(at(instant), twelve)).toBe(of12.trim());
    expect(clockCell(at(instant), twelve)).toBe(of12);
  });

  it('always takes the same cells of its column', () => {
    for (let minute = 0; minute < 1440; minute += 7) {
      const instant = at('2026-11-24T00:00Z') + minute * 60_000;
      expect(clockCell(instant, shop)).toHaveLength(clockCells(shop));
      expect(clockCell(instant, twelve)).toHaveLength(clockCells(twelve));
    }
  });

  it('is spoken without its colon', () => {
    expect(clockAloud(at('2026-11-24T18:30Z'), shop)).toBe('18 30');
  });
});

describe('a day', () => {
  // Weekdays of a perpetual calendar: 24 November 2026 is a Tuesday, 29 February 2028 a Tuesday, 1 January 2027 a Friday.
  it('is told with its month as a word', () => {
    expect(day(now, shop)).toBe('Tue 24 Nov');
    expect(weekday(now, shop)).toBe('Tue');
    expect(dayWords('2026-12-03')).toBe('Thu 3 Dec');
    expect(fullDay('2028-02-29')).toBe('Tue 29 Feb 2028');
    expect(shortDay('2027-01-01')).toBe('1 Jan');
    expect(weekdayOf('2027-01-01')).toBe('Fri');
  });

  it("is the shop's, not UTC's", () => {
    expect(day(at('2026-11-24T23:30Z'), { zone: 'Australia/Lord_Howe', hours: '24' })).toBe(
      'Wed 25 Nov',
    );
  });

  it('is counted by the calendar, over changes of the clock too', () => {
    expect(daysBetween('2026-03-01', '2026-04-01')).toBe(31);
    expect(daysBetween('2026-11-24', '2026-11-23')).toBe(-1);
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
  });
});

describe('when, seen from Tuesday 24 November, 14:29', () => {
  test.each([
    ['2026-11-24T18:30Z', '18:30', '18:30'],
    ['2026-11-24T00:05Z', '00:05', '00:05'],
    ['2026-11-25T08:55Z', '08:55 Wed', 'Wed 08:55'],
    ['2026-11-30T08:55Z', '08:55 Mon', 'Mon 08:55'],
    ['2026-12-01T08:55Z', '08:55 1 Dec', '1 Dec'],
    ['2026-11-23T18:30Z', '18:30 Mon', 'Mon 18:30'],
    ['2026-11-17T18:30Z', '18:30 17 Nov', '17 Nov'],
  ])('%s reads %s in a table and %s in a sentence', (instant, inTable, inSentence) => {
    expect(clockOrDay(at(instant), now, shop)).toBe(inTable);
    expect(whenInWords(at(instant), now, shop)).toBe(inSentence);
  });
});
