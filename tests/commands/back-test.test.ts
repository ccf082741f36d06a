import { expect, it } from 'vitest';
import { openForWriting } from '../../src/persist/index.ts';
import { inventShop, monday, scheduleOf, step } from '../tracker/estimate/invented-shop.ts';
import { openShop } from './support/shop.ts';

const wax = step('wax', { stepClass: 'wax', minutes: { typical: 60, low: 40, high: 90 } });

async function waxed(pieces: number) {
  const shop = openShop();
  const opened = await openForWriting(shop.folder, {
    clock: { now: () => monday, today: () => '2026-11-16' },
  });
  if (!opened.ok) throw new Error(opened.problem.says);
  const invented = inventShop();
  for (let index = 0; index < pieces; index += 1) {
    const id = invented.add(`Piece ${index}`, scheduleOf([wax]), monday);
    invented.work(id, index * 100, index * 100 + 50 + (index % 7));
  }
  opened.value.change(() => ({ append: { bench: invented.facts() }, result: null }));
  opened.value.close();
  return shop;
}

it('foretells past steps anew, and says whether the ranges would have held', async () => {
  const shop = await waxed(40);
  const out = await shop.does('hours', '--back-test');
  expect(out).toMatch(/^step class .*steps range held/);
  expect(out).toMatch(/all steps +39 +\d+ in 100/);
  expect(out).toMatch(/your first 30 +30/);
  expect(out).toContain('Every step foretold anew');
  const json = await shop.json('hours', '--back-test');
  expect(json).toMatchObject({
    steps: 40,
    classes: [{ stepClass: 'wax', steps: 39, claimed: 0.8 }],
  });
});

it('says so where there is nothing to try, and takes neither a piece nor CSV', async () => {
  const shop = await waxed(1);
  expect(await shop.does('hours', '--back-test')).toContain('No step to try yet');
  expect((await shop.run(['hours', '1', '--back-test'])).err).toContain('Leave the piece out');
  expect((await shop.run(['hours', '--csv', '--back-test'])).code).toBe(64);
});
