import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { conversation, start } from '../../persist/children/child.ts';
import { programs } from '../../persist/children/programs.ts';
import type { ClockedShop } from './clocked-shop.ts';
import {
  clockedShop,
  hearsNoMore,
  keeperThere,
  minute,
  shows,
  until,
  watchingScreen,
} from './support.ts';

const titles = (shop: ClockedShop): readonly string[] => shop.heard().map(({ title }) => title);

/** A dwell that may be followed up from 5 minutes and spoils at 15, a timer of 50, a coat that can be tried at 60. */
function shopAtWork(): ClockedShop {
  const shop = clockedShop();
  shop.run('add', 'Stool', '--schedule', 'wet');
  shop.run('add', 'Desk', '--schedule', 'coated');
  shop.run('timer', 'clamps', '50min');
  shop.run('first-stroke', 'Desk');
  shop.run('done', 'Desk');
  shop.run('first-stroke', 'Stool');
  return shop;
}

describe('a machine that sleeps over what was due', { timeout: 120_000 }, () => {
  it('is told of on waking in one summary, worst first; what is in hand has the minutes that went by', async () => {
    const shop = shopAtWork();
    const screen = await watchingScreen(shop);
    process.kill(screen.pid, 'SIGSTOP');
    shop.clock.sleep(70 * minute);
    process.kill(screen.pid, 'SIGCONT');
    await until('the summary', () => shop.heard().length > 0);
    const [summary] = shop.heard();
    expect(`${summary?.title}. ${summary?.body}`).toMatch(
      /^Asleep or stopped \d\d:\d\d to \d\d:\d\d. Worst: 1 Stool: B on, late .* 5\d min ago: .*clamps, .* 2\d min ago.*2 Desk: try it, .*opened 1\d min ago/,
    );
    expect(summary?.loud).toBe(true);
    await shows(screen, 'in hand 70 min');
    await hearsNoMore(shop);
    expect(shop.onRecord()).toHaveLength(1);
    shop.run('put-down');
    expect(shop.run('sessions', 'Stool')).toContain('70 min');
  });

  it('is told of by the keeper, once', async () => {
    const shop = shopAtWork();
    const pid = await keeperThere(shop);
    process.kill(pid, 'SIGSTOP');
    shop.clock.sleep(70 * minute);
    process.kill(pid, 'SIGCONT');
    await until('the summary', () => shop.heard().length > 0);
    await hearsNoMore(shop);
    // Stopped before its first look, it can't say from when.
    expect(titles(shop)).toEqual([expect.stringMatching(/^Asleep or stopped /)]);
  });
});

describe('a screen that is stopped', { timeout: 120_000 }, () => {
  it('leaves its pings to a keeper, and tells none of them again when it goes on', async () => {
    const shop = clockedShop();
    shop.run('timer', 'clamps', '1min');
    const screen = await watchingScreen(shop);
    await keeperThere(shop);
    process.kill(screen.pid, 'SIGSTOP');
    await shop.passes(75_000);
    // It is given half a minute.
    expect(titles(shop)).toEqual([]);
    await shop.passes(30_000);
    await until('the keeper', () => shop.heard().length > 0);
    process.kill(screen.pid, 'SIGCONT');
    await hearsNoMore(shop);
    expect(titles(shop)).toEqual([expect.stringContaining('clamps')]);
    expect(shop.onRecord().map(({ ways }) => ways)).toEqual([['hook']]);
  });

  it('leaves them to another screen at once', async () => {
    const shop = clockedShop();
    shop.run('timer', 'clamps', '1min');
    const stopped = await watchingScreen(shop);
    await watchingScreen(shop);
    process.kill(stopped.pid, 'SIGSTOP');
    shop.clock.sleep(minute);
    await until('the other screen', () => shop.heard().length > 0);
    process.kill(stopped.pid, 'SIGCONT');
    await hearsNoMore(shop);
    expect(shop.onRecord()).toHaveLength(1);
  });

  it('between its claim and its word that it was sent is not waited for, and the second one says so', async () => {
    const shop = clockedShop();
    shop.run('timer', 'clamps', '1min');
    const screen = await watchingScreen(shop);
    await keeperThere(shop);
    shop.hookIsTo('stop after', screen.pid);
    shop.clock.sleep(minute);
    await until('the hook', shop.hookHasDone);
    await shop.passes(80_000);
    await until('the keeper', () => shop.heard().length > 1);
    process.kill(screen.pid, 'SIGCONT');
    await hearsNoMore(shop);
    expect(shop.heard().map(({ body }) => body.includes('Perhaps told before.'))).toEqual([
      false,
      true,
    ]);
  });
});

it(
  'a process that is stopped with the lock in its hands keeps others from writing, who say so, and loses nothing',
  { timeout: 120_000 },
  async () => {
    const shop = clockedShop();
    shop.run('add', 'Stool', '--schedule', 'wet');
    shop.run('timer', 'clamps', '1min');
    const screen = await watchingScreen(shop);
    const holder = start(programs.workOnRequest, [shop.folder]);
    const { hear, ask } = conversation(holder);
    await hear();
    // Stopped in the middle of what takes a tenth of a second.
    await ask('hold 100');
    process.kill(holder.pid ?? 0, 'SIGSTOP');
    shop.clock.sleep(minute);
    await until('the ping', () => shop.heard().length > 0);
    expect(shop.heard().map(({ body }) => body)).toEqual([
      expect.stringContaining('Not on record: perhaps told twice.'),
    ]);
    const refused = shop.tries('note', 'Stool', 'wobbles');
    expect(refused.code).not.toBe(0);
    expect(refused.error).toMatch(
      /Not stored: another recoat kept .* locked for 5 seconds\.\s+Look for one that hangs or is suspended/,
    );
    expect(shop.run('bench')).toContain('Stool');
    // By now the screen has waited in vain to put on record that the ping went out.
    for (const key of ['1', 'f']) {
      screen.write(key);
      await wait(1000);
    }
    await shows(screen, 'Not stored: another recoat kept');
    process.kill(holder.pid ?? 0, 'SIGCONT');
    const closed = once(holder, 'close');
    holder.stdin?.end();
    await closed;
    shop.run('note', 'Stool', 'wobbles');
    await shop.passes(40_000);
    await wait(1000);
    expect(shop.onRecord()).toHaveLength(1);
    expect(shop.heard()).toHaveLength(1);
    expect(shop.run('job-card', 'Stool')).toContain('wobbles');
  },
);
