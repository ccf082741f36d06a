import { expect, test } from 'vitest';
import { openShop } from './support/shop.ts';

test('picking up a sanding step says which coats are tacky, till when, and it is in the JSON', async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear');
  await shop.does('add', 'Beech stool', '--schedule', 'bleach-and-clear');
  await shop.does('pick-up', '2', '--step', 'clear-1');
  await shop.does('first-stroke', '2');
  shop.minutesLater(20);
  await shop.does('done', '2');
  const told = await shop.does('pick-up', '1', '--step', 'sand-120');
  expect(told).toContain('caution: 2 tacky till 15:34: sand outside');
  await shop.does('take-back');
  const { cautions } = await shop.json('pick-up', '1', '--step', 'sand-120');
  expect(cautions).toContainEqual({
    id: 'tacky',
    says: '2 tacky',
    until: '2026-11-24T15:34:00.000-05:00',
    then: 'sand outside',
    deadly: false,
    source: 'common practice, no source',
  });
  expect(cautions.map(({ id }) => id)).toContain('lead-not-tested');
});

test('an improvised vinegar wash on a piece that was dabbed with chlorine bleach is said to be deadly at once', async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
  await shop.does('insert-step', '1', 'dab', 'laundry', 'bleach', 'on', 'ink', '--class', 'bleach');
  await shop.does('pick-up', '1');
  await shop.does('done', '1');
  const told = await shop.does('insert-step', '1', 'wash', 'with', 'vinegar');
  expect(told).toContain('it makes chlorine, a deadly gas. First: clear water more than once');
  const all = await shop.json('cautions', '1');
  expect(all.cautions[0]).toMatchObject({ id: 'pair: chlorine bleach, vinegar', deadly: true });
  expect(all.cautions[0]?.source).toContain('Department of Health');
});

test('cautions of a step, in full, in their order, deferring to the label', async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear');
  const told = await shop.does('cautions', '1', '--step', 'bleach');
  expect(told).toContain('Oak chest, bleach A, then B while A is wet');
  expect(told.split('\n')[1]).toMatch(/^caution: Lye and strong peroxide blind and burn/);
  expect(told).toContain('caution: Never A and B in one vessel');
  expect(told).toContain('Label, local codes and licensed practice come first.');
});

test('what lies under a stain is said with its first section, not with each', async () => {
  const shop = openShop();
  await shop.does('add', 'Pine box', '--schedule', 'strip-stain-varnish');
  const notYet = /over old finish/;
  expect(await shop.does('pick-up', '1', '--step', 'stain', '--anyway', 'done before')).toMatch(
    notYet,
  );
  expect(await shop.does('next-stamp', '1')).toMatch(notYet);
  expect(await shop.does('next-stamp', '1')).not.toMatch(notYet);
  expect(await shop.does('next-stamp', '1')).not.toMatch(notYet);
});

test('what the air says against a coat stands below its cautions, till the coat is on', async () => {
  const shop = openShop();
  await shop.does('add', 'Beech stool', '--schedule', 'bleach-and-clear');
  const told = await shop.does('cautions', '1', '--step', 'clear-1');
  expect(told).toContain('\nair: no reading of the air yet: note temperature and humidity first\n');
  await shop.does('conditions', '8C', '50%');
  const cold = 'too cold: 8 C, not below 10 C. Warm the shop';
  expect(await shop.does('cautions', '1', '--step', 'clear-1')).toContain(`\nair: ${cold}\n`);
  expect((await shop.json('cautions', '1', '--step', 'clear-1')).air).toContain(cold);
  expect((await shop.json('cautions', '1', '--step', 'sand-120')).air).toEqual([]);
  await shop.does('pick-up', '1', '--step', 'clear-1');
  await shop.does('first-stroke', '1');
  await shop.does('done', '1');
  expect(await shop.does('cautions', '1', '--step', 'clear-1')).not.toContain('air:');
});

test('oily rags are asked about on the bench until told that they are dealt with', async () => {
  const shop = openShop();
  expect(await shop.does('rags')).toContain('No oily rags are left');
  await shop.does('add', 'Oak chest', '--schedule', 'strip-stain-varnish');
  await shop.does('pick-up', '1', '--step', 'varnish-1');
  await shop.does('first-stroke', '1');
  await shop.does('done', '1');
  expect(await shop.does('bench')).toContain('Oily rags from 1 Oak chest: dealt with?');
  expect((await shop.json('rags')).rags).toMatchObject([{ number: 1, name: 'Oak chest' }]);
  shop.minutesLater(5);
  await shop.does('rags', 'dealt-with');
  expect(await shop.does('bench')).not.toContain('Oily rags');
  expect((await shop.json('bench')).rags).toEqual([]);
  expect(await shop.does('take-back')).toContain('rags dealt with');
  expect((await shop.json('bench')).rags.length).toBe(1);
});
