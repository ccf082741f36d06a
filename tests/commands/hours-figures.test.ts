import { parse } from 'csv-parse/sync';
import { expect, it } from 'vitest';
import { comeTo } from './support/come-to.ts';
import { must } from './support/must.ts';
import { openShop, type Shop } from './support/shop.ts';

/** Paints a first coat on a new piece, the only one on the bench: 6 minutes before its first stroke, 5 after it was done. */
async function paints(shop: Shop, name: string, minutes: number): Promise<void> {
  await shop.does('add', name, '--schedule', 'paint-and-wax');
  await comeTo(shop, 'coat, brushed');
  await shop.does('pick-up', '1');
  shop.minutesLater(6);
  await shop.does('first-stroke', '1');
  shop.minutesLater(minutes);
  await shop.does('done', '1');
  shop.minutesLater(5);
  await shop.does('put-down');
}

/** Twelve minutes of work that belongs to no step. */
async function worksOtherwise(shop: Shop): Promise<void> {
  await shop.does('pick-up', '1', '--other');
  shop.minutesLater(12);
  await shop.does('put-down');
}

it('tells of a piece what was work, setup and other work, and what was foretold', async () => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  await paints(shop, 'Oak chest', 25.26);
  await worksOtherwise(shop);
  const hours = await shop.json('hours', '1');
  expect(hours.recordedMinutes).toBeCloseTo(25.26 + 6 + 5 + 12, 6);
  expect(hours.otherMinutes).toBeCloseTo(12, 6);
  expect(hours.setupMinutes).toBeCloseTo(11, 6);
  expect(hours.done?.minutes).toBeCloseTo(25.26, 6);
  const coat = must(hours.steps.find(({ state }) => state === 'done'));
  // As the finishing schedule has it: 30 minutes, 20 to 50.
  expect(coat.estimate).toMatchObject({ minutes: 30, low: 20, high: 50 });
  expect(coat.minutes).toBeCloseTo(25.26, 6);
  expect(coat).toMatchObject({ about: false, sessions: 1, verdict: 'inside' });
  expect(coat.setupMinutes).toBeCloseTo(11, 6);
  const rows = parse<Record<string, string>>(await shop.does('hours', '1', '--csv'), {
    columns: true,
  });
  expect(rows.find(({ state }) => state === 'done')).toMatchObject({
    minutes: '25.3',
    estimated: '30',
    low: '20',
    high: '50',
    'setup minutes': '11',
    sessions: '1',
  });
});

it('tells over all what the hours went into, how far estimates were off, and which ranges held', async () => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  // The last one lies beyond any range that 20 and 30 minutes can teach.
  const took = [20, 30, 400];
  const ratios: number[] = [];
  for (const [index, minutes] of took.entries()) {
    await paints(shop, `Chest ${index}`, minutes);
    await worksOtherwise(shop);
    // A night in which nothing is in hand.
    shop.minutesLater(600);
    const { steps } = await shop.json('hours', '1');
    const coat = must(steps.find(({ state }) => state === 'done'));
    ratios.push(minutes / coat.estimate.minutes);
    await shop.does('off-bench', '1');
  }
  const { pieces, classes, rangesHeld, spent } = await shop.json('hours');
  expect(pieces).toBe(3);
  expect(spent.workingMinutes).toBeCloseTo(450, 6);
  expect(spent.setupMinutes).toBeCloseTo(3 * 11, 6);
  expect(spent.otherMinutes).toBeCloseTo(3 * 12, 6);
  expect(spent.waitingMinutes).toBeCloseTo(3 * 600, 6);
  expect(rangesHeld).toMatchObject({ held: 2, of: 3, claimed: 0.8 });
  const coats = must(classes.find(({ stepClass }) => stepClass === 'coat, brushed'));
  const [least, middle, most] = ratios.toSorted((a, b) => a - b).map(must);
  expect(coats.ratio).toBeCloseTo(must(middle), 6);
  expect(must(coats.low)).toBeGreaterThanOrEqual(must(least));
  expect(must(coats.low)).toBeLessThan(must(middle));
  expect(must(coats.high)).toBeGreaterThan(must(middle));
  expect(must(coats.high)).toBeLessThanOrEqual(must(most));
});
