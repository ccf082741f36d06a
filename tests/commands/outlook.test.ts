import { describe, expect, it } from 'vitest';
import { openShop } from './support/shop.ts';

describe('what a piece will take', () => {
  it('is said when it is added: hours of hands, and days at the least', async () => {
    const shop = openShop();
    expect(await shop.does('add', 'Ash chair', '--schedule', 'glue-up-repair')).toMatch(
      /^[\d.]+ to \d+ h, 4 times in 5, from the finishing schedule, not yet from you\nat least 2 to 4 days on the bench: for what dries or sets, with hands at work 08:00-18:00 every day$/m,
    );
    const { outlook } = await shop.json('add', 'Ash chair', '--schedule', 'glue-up-repair');
    expect(outlook).toMatchObject({
      chance: 0.8,
      model: 'finishing schedule',
      leastDays: 2,
      mostDays: 4,
      leastDaysByLabel: 2,
      mostDaysByLabel: 4,
    });
  });

  it('follows what is told of the piece, the hours of the shop and its air', async () => {
    const shop = openShop();
    const added = await shop.json('add', 'Pine chest', '--schedule', 'strip-stain-varnish');
    const before = added.outlook;
    const made = (await shop.json('describe', '1', '--year', '1990', '--size', '0.9 m2')).outlook;
    expect(made?.highMinutes).toBeLessThan(before?.highMinutes ?? 0);
    await shop.does('settings', 'shop-hours', '19:00-21:00');
    const evenings = (await shop.json('describe', '1', '--wood', 'soft')).outlook;
    expect(evenings?.leastDays).toBeGreaterThan(made?.leastDays ?? Infinity);
    await shop.does('conditions', '14C', '70%');
    const cold = await shop.json('describe', '1', '--wood', 'soft');
    expect(cold.outlook?.leastDaysByLabel).toBe(evenings?.leastDays);
    expect(cold.outlook?.leastDays).toBeGreaterThan(evenings?.leastDays ?? Infinity);
    expect(await shop.does('describe', '1', '--wood', 'soft')).toMatch(
      /at least \d+ to \d+ days on the bench, \d+ to \d+ by the labels: /,
    );
  });

  it('is no longer said once something was done to it, nor by other commands', async () => {
    const shop = openShop();
    await shop.does('add', 'Ash chair', '--schedule', 'glue-up-repair');
    expect((await shop.json('note', '1', 'one rung is loose')).outlook).toBeNull();
    await shop.does('done', '1');
    expect((await shop.json('describe', '1', '--wood', 'hard')).outlook).toBeNull();
  });
});
