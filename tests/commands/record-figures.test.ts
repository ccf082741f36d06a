import { expect, it } from 'vitest';
import { hour, minute } from '../../src/tracker/time/index.ts';
import { comeTo } from './support/come-to.ts';
import { must } from './support/must.ts';
import { openShop } from './support/shop.ts';

it('a window tells when it opens, when it next closes and what comes after, and when it was found ready', async () => {
  const shop = openShop({ now: '2026-11-24T14:29:00-05:00' });
  await shop.does('add', 'Chair', '--schedule', 'aerosol-enamel');
  await comeTo(shop, 'coat, sprayed');
  await shop.does('first-stroke', '1');
  const first = shop.now();
  shop.minutesLater(2);
  await shop.does('next-stamp', '1');
  const last = shop.now();
  const nextPass = async () => {
    const { windows } = await shop.json('windows', '1');
    return must(windows.find(({ verb }) => verb === 'next pass'));
  };
  const window = await nextPass();
  // The can: within the hour or after two days (templates/products/paints.yaml, common practice, no source).
  expect(Date.parse(must(window.opens))).toBe(last + 5 * minute);
  expect(Date.parse(must(window.closes))).toBe(first + hour);
  expect(window.stretches.map(({ meaning, begins }) => [meaning, Date.parse(begins)])).toEqual([
    ['wait', Date.parse(window.begun)],
    ['go', last + 5 * minute],
    ['keep off', first + hour],
    ['go', last + 48 * hour],
  ]);
  expect(window.foundReady).toBeNull();
  // Of each window the stretch in force is marked.
  expect((await shop.does('windows', '1')).match(/^ {2}> \w+/gm)?.at(0)).toBe('  > wait');
  shop.minutesLater(4);
  await shop.does('ready', '1');
  expect(Date.parse(must((await nextPass()).foundReady))).toBe(shop.now());
});

it('a job card tells how long a dwell stood', async () => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear', '--wood', 'hard');
  await comeTo(shop, 'bleach');
  await shop.does('first-stroke', '1');
  shop.minutesLater(12);
  await shop.does('first-stroke', '1');
  await shop.does('done', '1');
  const { rows: bleached } = await shop.json('job-card', '1');
  const outcomes = bleached.flatMap((row) => (row.row === 'step' ? row.outcomes : []));
  expect(outcomes).toMatchObject([{ verb: 'B on', outcome: 'in time', afterMinutes: 12 }]);
});

it('a job card tells how long a coat had when it was tried, and when the piece left', async () => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  await shop.does('add', 'Oak chest', '--schedule', 'paint-and-wax');
  await comeTo(shop, 'coat, brushed');
  await shop.does('first-stroke', '1');
  shop.minutesLater(20);
  await shop.does('done', '1');
  shop.minutesLater(130);
  await shop.does('not-yet', '1');
  shop.minutesLater(1);
  await shop.does('off-bench', '1');
  const card = await shop.json('job-card', 'Oak chest');
  expect(card.rows.filter(({ row }) => row === 'check')).toMatchObject([
    { finding: 'not yet', minutesAfterStroke: 130 },
  ]);
  expect(Date.parse(must(card.left))).toBe(shop.now());
});
