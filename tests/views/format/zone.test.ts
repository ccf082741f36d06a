import { execFileSync } from 'node:child_process';
import { describe, expect, it, test } from 'vitest';
import {
  addDays,
  instantOfClock,
  midnightAfter,
  nextClock,
  noonAfterNight,
  shopDay,
  wallTime,
  zoneOffset,
} from '../../../src/views/format/index.ts';
import { readTransitions } from './zone-file.ts';

const at = (iso: string): number => Date.parse(iso);
const iso = (instant: number): string => new Date(instant).toISOString();
const minutes = (count: number): number => count * 60_000;

/**
 * Instants of the IANA time zone database (tzdb), written down from memory; the next test reads the database itself
 * where the machine has it.
 */
const transitions2026 = [
  { zone: 'America/New_York', at: '2026-03-08T07:00Z', before: -300, after: -240 },
  { zone: 'America/New_York', at: '2026-11-01T06:00Z', before: -240, after: -300 },
  { zone: 'Europe/London', at: '2026-03-29T01:00Z', before: 0, after: 60 },
  { zone: 'Europe/London', at: '2026-10-25T01:00Z', before: 60, after: 0 },
  { zone: 'Australia/Lord_Howe', at: '2026-04-04T15:00Z', before: 660, after: 630 },
  { zone: 'Australia/Lord_Howe', at: '2026-10-03T15:30Z', before: 630, after: 660 },
  { zone: 'Pacific/Chatham', at: '2026-04-04T14:00Z', before: 825, after: 765 },
];

test.each(transitions2026)(
  '$zone changes its clock at $at',
  ({ zone, at: when, before, after }) => {
    expect(zoneOffset(at(when) - 1, zone)).toBe(minutes(before));
    expect(zoneOffset(at(when), zone)).toBe(minutes(after));
  },
);

const zones = [
  'America/New_York',
  'Europe/London',
  'Australia/Lord_Howe',
  // Until 2011 its clock changed at one minute past midnight, off the quarter of an hour.
  'America/St_Johns',
  // A whole day was left out at the end of 2011.
  'Pacific/Apia',
  'Asia/Kathmandu',
  'America/Sao_Paulo',
];

describe('against the IANA database of the machine (TZif, RFC 9636), 1990 to 2026', () => {
  for (const zone of zones) {
    const settled = readTransitions(zone)?.filter(
      (each) => each.at >= at('1990-01-01') && each.at < at('2026-01-01'),
    );
    it.skipIf(settled === undefined)(`${zone}: every transition at its second`, () => {
      for (const { at: when, before, after } of settled ?? []) {
        expect([iso(when), zoneOffset(when - 1, zone), zoneOffset(when, zone)]).toEqual([
          iso(when),
          before,
          after,
        ]);
      }
    });
  }
});

const inNewYork = (day: string, time: string): string =>
  iso(instantOfClock(day, time, 'America/New_York'));

describe('a clock time that is skipped or comes twice (RFC 5545 section 3.3.5)', () => {
  it('reads a skipped time by the offset before the skip', () => {
    expect(inNewYork('2026-03-08', '02:30')).toBe('2026-03-08T07:30:00.000Z');
    expect(wallTime(at('2026-03-08T07:30Z'), 'America/New_York')).toEqual({
      day: '2026-03-08',
      hour: 3,
      minute: 30,
    });
  });

  it('takes the first of two', () => {
    expect(inNewYork('2026-11-01', '01:30')).toBe('2026-11-01T05:30:00.000Z');
  });

  it('waits for the second one when the first is over', () => {
    const between = at('2026-11-01T05:45Z');
    expect(iso(nextClock(between, '01:30', 'America/New_York'))).toBe('2026-11-01T06:30:00.000Z');
  });

  it('knows half hours', () => {
    expect(iso(instantOfClock('2026-04-05', '01:45', 'Australia/Lord_Howe'))).toBe(
      '2026-04-04T14:45:00.000Z',
    );
    expect(iso(instantOfClock('2026-10-04', '02:15', 'Australia/Lord_Howe'))).toBe(
      '2026-10-03T15:45:00.000Z',
    );
  });
});

describe('the next time the clock shows something', () => {
  it('is now, if it shows it now', () => {
    const now = at('2026-11-24T07:30Z');
    expect(nextClock(now, '07:30', 'Europe/London')).toBe(now);
    expect(iso(nextClock(now + 1, '07:30', 'Europe/London'))).toBe('2026-11-25T07:30:00.000Z');
  });
});

describe('midnight', () => {
  it('ends a day of 23 and one of 25 hours', () => {
    expect(iso(midnightAfter(at('2026-03-08T05:00Z'), 'America/New_York'))).toBe(
      '2026-03-09T04:00:00.000Z',
    );
    expect(iso(midnightAfter(at('2026-11-01T04:00Z'), 'America/New_York'))).toBe(
      '2026-11-02T05:00:00.000Z',
    );
  });

  it('is the skip where midnight itself is skipped', () => {
    // Sao Paulo, 2018-11-04: from midnight to 01:00 (tzdb, from memory).
    expect(iso(midnightAfter(at('2018-11-04T01:00Z'), 'America/Sao_Paulo'))).toBe(
      '2018-11-04T03:00:00.000Z',
    );
  });

  it('is still to come when the clock was set back over it', () => {
    // St. John's, 2010-11-07 at 00:01 back to 23:01 (tzdb, from memory): midnight comes twice.
    const secondEvening = at('2010-11-07T03:00Z');
    expect(wallTime(secondEvening, 'America/St_Johns')).toEqual({
      day: '2010-11-06',
      hour: 23,
      minute: 30,
    });
    expect(iso(midnightAfter(secondEvening, 'America/St_Johns'))).toBe('2010-11-07T03:30:00.000Z');
    expect(iso(nextClock(at('2010-11-07T02:30:30Z'), '23:30', 'America/St_Johns'))).toBe(
      '2010-11-07T03:00:00.000Z',
    );
  });
});

describe('the far end of the time bars', () => {
  const farEnd = (now: string): string => iso(noonAfterNight(at(now), 'Europe/London'));

  it('is the noon after the coming night, and moves on at 05:00', () => {
    expect(farEnd('2026-11-24T14:29Z')).toBe('2026-11-25T12:00:00.000Z');
    expect(farEnd('2026-11-24T23:59Z')).toBe('2026-11-25T12:00:00.000Z');
    expect(farEnd('2026-11-25T04:59:59Z')).toBe('2026-11-25T12:00:00.000Z');
    expect(farEnd('2026-11-25T05:00Z')).toBe('2026-11-26T12:00:00.000Z');
  });

  it('follows the clock over a change', () => {
    expect(farEnd('2026-03-28T20:00Z')).toBe('2026-03-29T11:00:00.000Z');
    expect(farEnd('2026-10-24T20:00Z')).toBe('2026-10-25T12:00:00.000Z');
  });
});

describe('a zone called auto', () => {
  it("is the machine's, and asks no more than Date does", () => {
    const script = `
      import {wallTime, midnightAfter, shopDay} from ${JSON.stringify(new URL('../../../src/views/format/zone.ts', import.meta.url).href)}
      Intl.DateTimeFormat = function () { throw new Error('Intl was asked') }
      const instant = Date.parse('2026-07-01T16:30Z')
      console.log(JSON.stringify([wallTime(instant, 'auto'), midnightAfter(instant, 'auto'), shopDay(instant, 'auto')]))`;
    const output = execFileSync(process.execPath, ['--input-type=module', '-e', script], {
      env: { ...process.env, TZ: 'Asia/Tokyo' },
      encoding: 'utf8',
    });
    expect(JSON.parse(output)).toEqual([
      { day: '2026-07-02', hour: 1, minute: 30 },
      at('2026-07-02T15:00Z'),
      '2026-07-02',
    ]);
  });
});

it('counts calendar days across months, years and a leap day', () => {
  expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
  expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
  expect(addDays('2028-03-01', -1)).toBe('2028-02-29');
  expect(shopDay(at('2026-11-24T23:30Z'), 'Pacific/Chatham')).toBe('2026-11-25');
});

it('refuses what is no day and no clock time', () => {
  expect(() => instantOfClock('2026-11-24', '25:00', 'Europe/London')).toThrow('2026-11-24 25:00');
});
