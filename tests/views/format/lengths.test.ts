import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  leftCells,
  lengthAloud,
  minutesSpent,
  timeLeft,
  timeLeftOf,
  timeSince,
  type ShopClock,
} from '../../../src/views/format/index.ts';

const shop: ShopClock = { zone: 'Europe/London', hours: '24' };
const second = 1000;
const minute = 60 * second;
const hour = 60 * minute;
const at = (iso: string): number => Date.parse(iso);

describe('time left', () => {
  test.each([
    [40 * second, '0:40'],
    [7 * minute + 40 * second, '7:40'],
    [0, '0:00'],
    [-5 * minute, '0:00'],
    // The last second counts until it is over.
    [1, '0:01'],
    [39 * second + 997, '0:40'],
    [10 * minute - second, '9:59'],
    [10 * minute - 1, '10 min'],
    [10 * minute, '10 min'],
    [41 * minute, '41 min'],
    [100 * minute - second, '99 min'],
    [100 * minute, '1 h 40'],
    [4 * hour + minute, '4 h 01'],
    [10 * hour - second, '9 h 59'],
    [10 * hour, '10 h'],
    [22 * hour + 30 * minute, '22 h'],
  ])('%i ms is %s', (ms, told) => {
    expect(timeLeftOf(ms)).toBe(told);
  });

  test.each([
    // From the frames: instants and what stands beside them.
    ['2026-11-24T14:29Z', '2026-11-24T18:30Z', '4 h 01'],
    ['2026-11-24T14:29Z', '2026-11-24T15:10Z', '41 min'],
    ['2026-11-24T14:29Z', '2026-11-25T08:55Z', 'Wed'],
    ['2026-12-03T16:41:20Z', '2026-12-03T16:42Z', '0:40'],
    ['2026-12-03T16:41:20Z', '2026-12-03T16:49Z', '7:40'],
    ['2026-12-03T16:41:20Z', '2026-12-03T23:00Z', '6 h 18'],
    // Midnight counts only from 100 minutes on.
    ['2026-11-24T23:58Z', '2026-11-25T00:03Z', '5:00'],
    ['2026-11-24T23:30Z', '2026-11-25T00:30Z', '60 min'],
    ['2026-11-24T23:30Z', '2026-11-25T01:10Z', 'Wed'],
    ['2026-11-24T14:29Z', '2026-12-14T09:00Z', '14 Dec'],
    // A day of 25 hours: from 00:30 summer time to 23:30 winter time are 24 hours.
    ['2026-10-24T23:30Z', '2026-10-25T23:30Z', '24 h'],
  ])('at %s until %s: %s', (now, until, told) => {
    expect(timeLeft(at(until), at(now), shop)).toBe(told);
  });

  it('never takes more than its cells, and never promises more than a second too much', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 * 24 * hour }), (ms) => {
        const now = at('2026-03-27T21:17Z');
        expect(timeLeft(now + ms, now, shop).length).toBeLessThanOrEqual(leftCells);
        expect(timeSince(now - ms, now, shop).length).toBeLessThanOrEqual(leftCells);
        const told = toldMs(timeLeftOf(ms));
        expect(told - ms).toBeLessThan(second);
        expect(ms - told).toBeLessThan(ms < 10 * minute ? second : ms < 10 * hour ? minute : hour);
      }),
    );
  });
});

/** Reads a told length back. */
function toldMs(told: string): number {
  const clock = /^(\d+):(\d\d)$/.exec(told);
  if (clock) return Number(clock[1]) * minute + Number(clock[2]) * second;
  const minutes = /^(\d+) min$/.exec(told);
  if (minutes) return Number(minutes[1]) * minute;
  const hours = /^(\d+) h(?: (\d\d))?$/.exec(told);
  if (hours) return Number(hours[1]) * hour + Number(hours[2] ?? 0) * minute;
  throw new Error(`not understood: ${told}`);
}

describe('time gone since', () => {
  test.each([
    ['2026-11-24T14:02Z', '2026-11-24T14:29Z', '27 min'],
    ['2026-12-03T16:20Z', '2026-12-03T16:41:20Z', '21 min'],
    ['2026-12-03T16:41Z', '2026-12-03T16:41:20Z', '0 min'],
    ['2026-12-03T09:00Z', '2026-12-03T12:10Z', '3 h 10'],
    ['2026-12-03T09:00Z', '2026-12-04T08:00Z', 'Thu'],
    // Over midnight, which does not matter yet.
    ['2026-12-03T23:50Z', '2026-12-04T00:20Z', '30 min'],
    // A clock that was set back.
    ['2026-12-03T09:00Z', '2026-12-03T08:59Z', '0 min'],
  ])('from %s, at %s: %s', (from, now, told) => {
    expect(timeSince(at(from), at(now), shop)).toBe(told);
  });
});

test.each([
  [27 * minute + 59 * second, '27 min'],
  [3 * hour + 10 * minute, '3 h 10'],
  [12 * hour + 40 * minute, '12 h 40'],
])('%i ms of work are %s', (ms, told) => {
  expect(minutesSpent(ms)).toBe(told);
});

test.each([
  [40 * second, '40 seconds'],
  [minute, '1 minute'],
  [4 * hour + minute, '4 hours 1 minute'],
  [hour, '1 hour'],
  [47 * hour + 5 * minute, '47 hours 5 minutes'],
  [50 * hour, '2 days'],
])('%i ms are spoken %s', (ms, told) => {
  expect(lengthAloud(ms)).toBe(told);
});
