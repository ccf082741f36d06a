import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { hour, minute } from '../../src/tracker/time/index.ts';
import { comeTo } from './support/come-to.ts';
import { openShop, type Shop } from './support/shop.ts';

/**
 * Changes of the clock as the IANA time zone database has them (tzdata, files northamerica, europe and australasia: rules
 * US, EU and LH), by how many minutes.
 */
const changes = [
  { zone: 'America/New_York', at: '2026-03-08T07:00:00Z', by: 60 },
  { zone: 'America/New_York', at: '2026-11-01T06:00:00Z', by: -60 },
  { zone: 'Europe/Berlin', at: '2026-03-29T01:00:00Z', by: 60 },
  { zone: 'Europe/Berlin', at: '2026-10-25T01:00:00Z', by: -60 },
  { zone: 'Australia/Lord_Howe', at: '2026-04-04T15:00:00Z', by: -30 },
  { zone: 'Australia/Lord_Howe', at: '2026-10-03T15:30:00Z', by: 30 },
] as const;

/** By a reference library: what a clock on the wall there shows. */
const zoned = (instant: number, zone: string): Temporal.ZonedDateTime =>
  Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone);
const wallClock = (instant: number, zone: string): string =>
  zoned(instant, zone).toPlainTime().toString({ smallestUnit: 'minute' });

const windowOf = async (shop: Shop, milestone: string | null, verb?: string) => {
  const { rows } = await shop.json('bench');
  const found = rows
    .flatMap(({ windows }) => windows)
    .find((each) => each.milestone === milestone && (verb === undefined || each.verb === verb));
  if (found === undefined) throw new Error(`no window ${milestone} ${verb}`);
  return found;
};

/** Fifty minutes before the change. */
const shopBefore = ({ zone, at }: (typeof changes)[number]): Shop =>
  openShop({ zone, now: new Date(Date.parse(at) - 50 * minute).toISOString() });

it.each(changes)('are in $zone at $at by $by minutes', ({ zone, at, by }) => {
  const [before, after] = [Date.parse(at) - 1, Date.parse(at)].map(
    (instant) => zoned(instant, zone).offsetNanoseconds / 60e9,
  );
  expect((after ?? 0) - (before ?? 0)).toBe(by);
});

describe.each(changes)('in $zone at $at', (change) => {
  const { zone } = change;

  it('a timer runs as long as it was set, and its time of day is the new clock’s', async () => {
    const shop = shopBefore(change);
    await shop.does('timer', 'clamps', '90min');
    const opens = shop.now() + 90 * minute;
    for (const minutes of [0, 20, 35, 20]) {
      shop.minutesLater(minutes);
      const timer = await windowOf(shop, null);
      expect(Date.parse(timer.opens ?? '')).toBe(opens);
      expect(timer.state).toBe('before');
      expect(await shop.does('bench')).toContain(wallClock(opens, zone));
    }
    shop.minutesLater(15);
    expect((await windowOf(shop, null)).state).toBe('open');
  });

  it('minutes in hand are those that went by', async () => {
    const shop = shopBefore(change);
    await shop.does('add', 'Box', '--schedule', 'aerosol-enamel');
    shop.minutesLater(20);
    await shop.does('pick-up', 'Box');
    for (const minutes of [10, 25, 10, 10]) {
      shop.minutesLater(minutes);
      const { sessions } = await shop.json('sessions', 'Box');
      expect(sessions).toHaveLength(1);
    }
    await shop.does('done', 'Box');
    const hours = await shop.json('hours', 'Box');
    expect(hours.steps[0]?.minutes).toBe(55);
  });

  it('a dwell ends when its minutes are over', async () => {
    const shop = shopBefore(change);
    await shop.does('add', 'Box', '--schedule', 'bleach-and-clear');
    await comeTo(shop, 'bleach');
    shop.minutesLater(48);
    await shop.does('first-stroke', 'Box');
    const dwell = (await shop.json('bench')).rows[0]?.windows[0];
    const [opens, closes] = [Date.parse(dwell?.opens ?? ''), Date.parse(dwell?.closes ?? '')];
    expect(opens).toBeGreaterThan(Date.parse(change.at));
    expect(closes - opens).toBeGreaterThan(0);
    shop.later(opens - shop.now());
    expect((await shop.json('bench')).rows[0]?.windows[0]).toMatchObject({
      opens: dwell?.opens,
      closes: dwell?.closes,
      state: expect.stringMatching(/open|closing/),
    });
    expect(await shop.does('windows')).toContain(wallClock(closes, zone));
  });

  it('a drying coat opens and closes by length, shown by the clock of then', async () => {
    const shop = shopBefore(change);
    await shop.does('add', 'Box', '--schedule', 'aerosol-enamel');
    await comeTo(shop, 'prime');
    await shop.does('first-stroke', 'Box');
    await shop.does('done', 'Box');
    const coat = await windowOf(shop, 'scuff');
    const opens = Date.parse(coat.opens ?? '');
    expect(opens - shop.now()).toBeGreaterThanOrEqual(hour);
    expect(coat.opens?.slice(11, 16)).toBe(wallClock(opens, zone));
    shop.minutesLater(55);
    expect(Date.parse((await windowOf(shop, 'scuff')).opens ?? '')).toBe(opens);
    expect(await shop.does('windows')).toContain(wallClock(opens, zone));
    shop.later(opens - shop.now() - 1);
    expect((await windowOf(shop, 'scuff')).state).toBe('before');
    shop.later(1);
    expect((await windowOf(shop, 'scuff')).state).toBe('open');
  });

  it('a move to another zone moves times of day and no window', async () => {
    const shop = shopBefore(change);
    await shop.does('timer', 'clamps', '90min');
    const opens = shop.now() + 90 * minute;
    for (const other of ['Asia/Kolkata', 'Pacific/Auckland', zone]) {
      await shop.does('settings', 'zone', other);
      expect(Date.parse((await windowOf(shop, null)).opens ?? '')).toBe(opens);
      expect(await shop.does('bench')).toContain(wallClock(opens, other));
      shop.minutesLater(25);
    }
    shop.minutesLater(15);
    expect((await windowOf(shop, null)).state).toBe('open');
  });
});
