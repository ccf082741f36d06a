import { expect, it } from 'vitest';
import { openShop } from './support/shop.ts';

async function coated() {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear');
  const { steps } = await shop.json('steps', '1');
  const coat = steps.find(({ stepClass }) => stepClass.startsWith('coat'));
  await shop.does('pick-up', '1', '--step', String(coat?.place));
  await shop.does('first-stroke', '1');
  shop.minutesLater(20);
  return shop;
}

it('is told with done, and stands on the job card', async () => {
  const shop = await coated();
  const { recorded } = await shop.json('done', '1', '--coat', 'heavy');
  expect(recorded).toMatch(/done on 1 Oak chest, heavy coat$/);
  const { rows } = await shop.json('job-card', '1');
  expect(rows.find(({ row }) => row === 'step')).toMatchObject({
    coat: [{ pass: 1, part: null, weight: 'heavy' }],
  });
  expect(await shop.does('job-card', '1')).toContain('heavy coat');
  expect(await shop.does('windows', '1')).toContain('a heavy coat: it dries slower than these');
});

it('refuses another word and does nothing', async () => {
  const shop = await coated();
  const refused = await shop.refuses('done', '1', '--coat', 'fat');
  expect(refused.code).toBe(64);
  expect(refused.says).toContain('"fat" is no weight of a coat: thin, normal, heavy.');
});

it('tells why a "not yet" came so late', async () => {
  const shop = await coated();
  await shop.does('done', '1');
  expect((await shop.refuses('why-late', '1', 'cold')).says).toContain('was no "not yet"');
  shop.minutesLater(60 * 24 * 3);
  expect((await shop.json('not-yet', '1')).recorded).toMatch(/times as long as expected$/);
  expect((await shop.refuses('why-late', '1', 'moon')).code).toBe(2);
  expect((await shop.json('why-late', '1', 'old', 'can')).recorded).toBe(
    'late for old can on 1 Oak chest',
  );
  const { rows } = await shop.json('job-card', '1');
  expect(rows.find(({ row }) => row === 'check')).toMatchObject({ why: 'old can' });
  expect(await shop.does('job-card', '1')).toContain('late for old can');
});
