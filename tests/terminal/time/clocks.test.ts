import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { BenchJson, SessionsJson } from '../../../src/commands/json-shapes/index.ts';
import type { ClockedShop } from './clocked-shop.ts';
import { clockedShop, hour, minute, shows, until, watchingScreen } from './support.ts';

/** Opens, closes and state of the piece's first window, and how many minutes are in hand. */
function seen(shop: ClockedShop, name: string) {
  const { rows } = JSON.parse(shop.run('bench', '--json')) as BenchJson;
  const row = rows.find((each) => each.piece?.name === name);
  const [window] = row?.windows ?? [];
  return {
    opensIn: Date.parse(window?.opens ?? '') - shop.clock.now(),
    state: window?.state,
  };
}

const minutesOf = (shop: ClockedShop, name: string): readonly number[] =>
  (JSON.parse(shop.run('sessions', name, '--json')) as SessionsJson).sessions.map(
    ({ minutes }) => minutes,
  );

/** A dwell, a coat that dries, and a session in hand. */
function shopAtWork(options: Parameters<typeof clockedShop>[0] = {}): ClockedShop {
  const shop = clockedShop(options);
  shop.run('add', 'Stool', '--schedule', 'wet');
  shop.run('add', 'Desk', '--schedule', 'coated');
  shop.run('first-stroke', 'Desk');
  shop.run('done', 'Desk');
  shop.run('first-stroke', 'Stool');
  return shop;
}

const settingsNoted = (shop: ClockedShop): number =>
  readFileSync(join(shop.folder, 'bench.json'), 'utf8').split('"clock-stepped"').length - 1;

/** What it takes to run a few commands on a busy machine. */
const aMoment = 20_000;

describe('a clock that is set while a screen is open', { timeout: 120_000 }, () => {
  it('moves no window and no minute, in both directions, by minutes and days', async () => {
    const shop = shopAtWork();
    const began = performance.now();
    const screen = await watchingScreen(shop);
    let slept = 0;
    let noticed = 0;
    for (const by of [30 * minute, -48 * hour, 72 * hour, -25 * hour]) {
      shop.clock.sleep(minute);
      slept += minute;
      shop.clock.setBy(by);
      noticed += 1;
      await until('the screen to notice', () => settingsNoted(shop) === noticed);
      const gone = slept + performance.now() - began;
      const dwell = seen(shop, 'Stool');
      const coat = seen(shop, 'Desk');
      expect([dwell.state, coat.state]).toEqual(['before', 'before']);
      expect(dwell.opensIn).toBeGreaterThan(5 * minute - gone - aMoment);
      expect(dwell.opensIn).toBeLessThanOrEqual(5 * minute - slept);
      expect(coat.opensIn).toBeGreaterThan(hour - gone - aMoment);
      expect(coat.opensIn).toBeLessThanOrEqual(hour - slept);
    }
    // Where the large letters stand, the key brings the bench back, and with it what was noticed.
    screen.write('k');
    await wait(500);
    screen.write('k');
    await shows(screen, "The machine's clock was set");
    shop.clock.sleep(minute + 30_000);
    await until('the ping', () => shop.heard().some(({ title }) => title.includes('B on, by')));
    const titles = shop.heard().map(({ title }) => title);
    expect(titles.filter((title) => title.includes('B on, by'))).toHaveLength(1);
    expect(titles.filter((title) => title.includes('Asleep'))).toEqual([]);
    shop.run('put-down');
    const most = (slept + 2 * minute + performance.now() - began) / minute;
    const [minutes = Number.NaN] = minutesOf(shop, 'Stool');
    expect(minutes).toBeGreaterThanOrEqual(5);
    expect(minutes).toBeLessThanOrEqual(most);
  });
});

describe.each([
  // The changes of America/New_York in 2026 as the IANA time zone database has them (tzdata, northamerica, rule US).
  { change: '2026-03-08T07:00:00Z', before: '01:5', after: '03:0' },
  { change: '2026-11-01T06:00:00Z', before: '01:5', after: '01:0' },
])('at the change of $change', { timeout: 120_000 }, ({ change, before, after }) => {
  it('a dwell and a session keep their length, shown by the clock of then', async () => {
    const startAt = new Date(Date.parse(change) - 4 * minute).toISOString();
    const shop = shopAtWork({ startAt, env: { TZ: 'America/New_York' } });
    const screen = await watchingScreen(shop);
    await shows(screen, before);
    expect(shop.run('bench')).toMatch(new RegExp(`1 +Stool .*${after}`));
    shop.clock.sleep(5 * minute);
    await until('the ping', () => shop.heard().length > 0);
    await shows(screen, after);
    expect(shop.heard()[0]?.title).toMatch(/B on, by .*:\d\d, (9|10) min left/);
    expect(seen(shop, 'Desk').opensIn).toBeGreaterThan(54 * minute);
    shop.run('put-down');
    expect(minutesOf(shop, 'Stool')[0]).toBeLessThan(7);
    expect(minutesOf(shop, 'Stool')[0]).toBeGreaterThanOrEqual(5);
    expect(screen.lines().join(' ')).not.toContain('clock was set');
    expect(
      Date.parse(
        (JSON.parse(shop.run('bench', '--json', '--zone', 'Asia/Kolkata')) as BenchJson).at,
      ),
    ).toBeCloseTo(shop.clock.now(), -4);
  });
});
