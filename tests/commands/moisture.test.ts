import { expect, it } from 'vitest';
import { openShop } from './support/shop.ts';

const withChest = async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear');
  return shop;
};

it('notes what a meter shows and says what it comes to', async () => {
  const shop = await withChest();
  const first = await shop.json('moisture', '1', '17', '--untouched', '9', '--ago', '24h');
  expect(first.recorded).toBe('wood 17 %, untouched 9 % on 1 Oak chest: 8 over what is at rest');
  await shop.does('moisture', 'Oak chest', '13');
  const { moisture, rows } = await shop.json('job-card', '1');
  expect(moisture).toMatchObject([
    {
      part: null,
      wood: { percent: 13, at: '2026-11-24T14:29:00.000-05:00' },
      against: { by: 'untouched', percent: 9 },
      over: 4,
      dryEnough: false,
      saltsFrom: null,
      falls: true,
      dryBy: { at: '2026-11-26T14:29:00.000-05:00' },
    },
  ]);
  expect(rows.filter(({ row }) => row === 'moisture')).toMatchObject([
    { spot: 'untouched', percent: 9, step: null, air: null },
    { spot: 'wood', percent: 17 },
    { spot: 'wood', percent: 13 },
  ]);
  expect((await shop.json('steps', '1')).moisture).toEqual(moisture);
  const card = (await shop.does('job-card', '1')).replaceAll(/\s+/g, ' ');
  expect(card).toContain('moisture - untouched 9 %');
  expect(card).toContain('about Thu 14:00 at this rate');
});

it('takes an untouched spot alone, and a step', async () => {
  const shop = await withChest();
  const { recorded } = await shop.json('moisture', '1', '--untouched', '9.5', '--step', '2');
  expect(recorded).toBe('untouched 9.5 % on 1 Oak chest');
});

it.each([
  [['1'], 64, /Not noted: nothing was given\. Write wood 12\.5, untouched 9\./],
  [['1', 'wet'], 64, /"wet" is no reading/],
  [['1', '3'], 1, /Not noted: 3 % is drier than a meter can tell: 4 to 60/],
  [['1', '12', '--untouched', '70'], 1, /70 % would be dripping wet/],
  [['2', '12'], 2, /no piece/],
] as const)('refuses %j', async (words, code, says) => {
  const shop = await withChest();
  const refused = await shop.refuses('moisture', ...words);
  expect(refused.code).toBe(code);
  expect(refused.says).toMatch(says);
});
