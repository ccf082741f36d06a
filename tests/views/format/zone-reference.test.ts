import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import {
  instantOfClock,
  midnightAfter,
  nextClock,
  noonAfterNight,
  shopDay,
  wallTime,
  type WallTime,
} from '../../../src/views/format/index.ts';

/** Zones with whole, half and quarter hours, changes at midnight and in the small hours, on both halves of the globe. */
const zones = [
  'America/New_York',
  'America/St_Johns',
  'America/Santiago',
  'America/Havana',
  'America/Sao_Paulo',
  'Europe/London',
  'Africa/Cairo',
  'Africa/Casablanca',
  'Asia/Beirut',
  'Asia/Kolkata',
  'Australia/Lord_Howe',
  'Pacific/Chatham',
  'Pacific/Apia',
  'Antarctica/Troll',
  'UTC',
];

const zoned = (instant: number, zone: string): Temporal.ZonedDateTime =>
  Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone);

const hour = 3_600_000;
const zone = fc.constantFrom(...zones);
const anyInstant = fc.integer({ min: Date.parse('1995-01-01'), max: Date.parse('2040-01-01') });

/** A zone and an instant: anywhere, or within a day and a half of a change of the clock. */
const zoneAndInstant = fc
  .tuple(zone, anyInstant, fc.option(fc.integer({ min: -36 * hour, max: 36 * hour })))
  .map(([name, instant, away]) => {
    const change = away === null ? null : zoned(instant, name).getTimeZoneTransition('next');
    return { name, instant: change === null ? instant : change.epochMilliseconds + (away ?? 0) };
  });

const clockTime = fc
  .tuple(
    fc.oneof(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 23 })),
    fc.integer({ min: 0, max: 59 }),
  )
  .map(
    ([hours, minutes]) => `${String(hours).padStart(2, '0')}:${String(minutes).padStart(2, '0')}`,
  );

const often = { numRuns: 400 };

it('shows the day and clock that Temporal shows', () => {
  fc.assert(
    fc.property(zoneAndInstant, ({ name, instant }) => {
      const expected = zoned(instant, name);
      expect(wallTime(instant, name)).toEqual<WallTime>({
        day: expected.toPlainDate().toString(),
        hour: expected.hour,
        minute: expected.minute,
      });
    }),
    often,
  );
});

it('reads clock times as Temporal does by default', () => {
  fc.assert(
    fc.property(zoneAndInstant, clockTime, ({ name, instant }, time) => {
      const day = shopDay(instant, name);
      const expected = Temporal.PlainDateTime.from(`${day}T${time}`).toZonedDateTime(
        name,
      ).epochMilliseconds;
      expect(instantOfClock(day, time, name)).toBe(expected);
    }),
    often,
  );
});

it('finds the first instant at or after another at which the clock shows a time', () => {
  fc.assert(
    fc.property(zoneAndInstant, clockTime, ({ name, instant }, time) => {
      const found = nextClock(instant, time, name);
      const today = zoned(instant, name).toPlainDate();
      const candidates = [-1, 0, 1, 2].flatMap((days) => {
        const local = today.add({ days }).toPlainDateTime(Temporal.PlainTime.from(time));
        const shown = (['earlier', 'later'] as const)
          .map((disambiguation) => local.toZonedDateTime(name, { disambiguation }))
          .filter((each) => each.toPlainDateTime().equals(local));
        return (shown.length > 0 ? shown : [local.toZonedDateTime(name)]).map(
          (each) => each.epochMilliseconds,
        );
      });
      expect(found).toBe(Math.min(...candidates.filter((candidate) => candidate >= instant)));
    }),
    often,
  );
});

it('ends each day where Temporal begins the next', () => {
  fc.assert(
    fc.property(zoneAndInstant, ({ name, instant }) => {
      const midnight = midnightAfter(instant, name);
      expect(midnight).toBeGreaterThan(instant);
      const next = zoned(instant, name).toPlainDate().add({ days: 1 });
      const begins = next.toZonedDateTime(name).epochMilliseconds;
      if (begins > instant) expect(midnight).toBe(begins);
      else expect(shopDay(midnight, name)).toBe(next.toString());
    }),
    often,
  );
});

it('puts the far end at a noon, 7 to 31 hours ahead give or take a change of the clock', () => {
  fc.assert(
    fc.property(zoneAndInstant, ({ name, instant }) => {
      // A shop that skipped a whole day had no such noon.
      fc.pre(name !== 'Pacific/Apia');
      const farEnd = noonAfterNight(instant, name);
      expect(wallTime(farEnd, name)).toMatchObject({ hour: 12, minute: 0 });
      expect(farEnd - instant).toBeGreaterThan(5 * hour);
      expect(farEnd - instant).toBeLessThanOrEqual(33 * hour);
    }),
    often,
  );
});
