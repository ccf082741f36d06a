import { expect, it } from 'vitest';
import {
  clockedShop,
  hearsNoMore,
  keeperThere,
  minute,
  until,
  watchingScreen,
} from '../time/support.ts';

it(
  'goes out once from two screens and a keeper, and once from the keeper when both are killed just before',
  { timeout: 120_000 },
  async () => {
    const shop = clockedShop();
    const screens = [await watchingScreen(shop), await watchingScreen(shop)];
    const began = shop.clock.now();
    shop.run('timer', 'first', '1min');
    shop.run('timer', 'second', '5min');
    await keeperThere(shop);
    const first = expect.stringContaining('first') as string;
    const second = expect.stringContaining('second') as string;
    const titles = (): readonly string[] => shop.heard().map(({ title }) => title);
    shop.clock.sleep(minute);
    await until('the first', () => titles().length > 0);
    await hearsNoMore(shop);
    expect(titles()).toEqual([first]);
    expect(shop.onRecord()).toHaveLength(1);
    shop.clock.sleep(began + 5 * minute - 8000 - shop.clock.now());
    // Everybody looks once more, and knows when the next one is due.
    shop.run('conditions', '20', '50');
    for (const screen of screens) screen.kill('SIGKILL');
    await Promise.all(screens.map(({ ended }) => ended));
    expect(titles()).toEqual([first]);
    await until('the second', () => titles().length > 1);
    await hearsNoMore(shop);
    expect(titles()).toEqual([first, second]);
    expect(shop.onRecord().map(({ ways }) => ways)).toEqual([['screen', 'bell', 'hook'], ['hook']]);
  },
);
