import { expect, it } from 'vitest';
import { openShop } from './support/shop.ts';

it('tells that two pieces should match, shows what differs, and undoes it', async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chair', '--schedule', 'bleach-and-clear');
  await shop.does('add', 'Its twin', '--schedule', 'bleach-and-clear');
  const { recorded } = await shop.json('matches', '2', '1');
  expect(recorded).toBe('2 Its twin matches 1 Oak chair');
  const { steps } = await shop.json('steps', '1');
  const coat = steps.find(({ stepClass }) => stepClass.startsWith('coat'));
  await shop.does('skip-step', '2', String(coat?.place));
  await shop.does('pick-up', '1', '--step', String(coat?.place));
  await shop.does('done', '1');
  const { matches } = await shop.json('steps', '2');
  expect(matches).toMatchObject([{ name: 'Oak chair', piece: { number: 1 } }]);
  expect(matches[0]?.differences.map(({ what }) => what)).toEqual(['coats']);
  expect(matches[0]?.differences[0]?.says).toMatch(/^1 (has|gets) \d coats? of .*, this \d$/);
  expect((await shop.does('job-card', '2')).replaceAll(/\s+/g, ' ')).toContain(
    'matches 1 Oak chair: 1',
  );
  expect((await shop.json('matches', '1', '2')).recorded).toBe(
    '1 Oak chair no longer matches 2 Its twin',
  );
  expect((await shop.json('job-card', '2')).matches).toEqual([]);
});

it('refuses a piece that is not there, or itself', async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chair', '--schedule', 'bleach-and-clear');
  expect(await shop.refuses('matches', '1', '2')).toMatchObject({ code: 2 });
  expect((await shop.refuses('matches', '1', '1')).says).toContain(
    'Not matched: 1 Oak chair can only match another piece.',
  );
});
