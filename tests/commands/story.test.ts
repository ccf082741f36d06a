import { expect, it } from 'vitest';
import { must } from './support/must.ts';
import { openShop } from './support/shop.ts';

it('follows a piece from the first look to the record of it', async () => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });

  expect(await shop.does()).toBe(
    'Bench, Tue 24 Nov 2026 08:00, no reading yet\nThe bench is empty.\n',
  );
  expect(await shop.does('conditions', '66F', '55%')).toBe('Tue 24 Nov 08:00  19 C 55 %\n');
  expect(await shop.does('add', 'Garden', 'stool', '--schedule', 'aerosol-enamel')).toContain(
    '1 Garden stool on the bench',
  );
  const steps = await shop.json('steps', '1');
  const coat = steps.steps.findIndex(({ stepClass }) => stepClass === 'coat, sprayed');
  // Everything before the first sprayed coat is done without being timed.
  for (const { id, state } of steps.steps.slice(0, coat)) {
    if (state === 'skipped') continue;
    shop.minutesLater(1);
    await shop.does('pick-up', 'garden', '--step', id, '--anyway', 'tried on a board');
    shop.minutesLater(9);
    await shop.does('done', 'garden');
  }
  await shop.does('put-down');

  const sprayed = must(steps.steps[coat]);
  shop.minutesLater(30);
  expect(await shop.does('pick-up', 'Garden stool')).toContain(`in hand since`);
  shop.minutesLater(5);
  expect(await shop.does('first-stroke', '1')).toContain(sprayed.name);
  const started = await shop.json('bench');
  expect(started.rows).toHaveLength(1);
  expect(started.rows[0]).toMatchObject({
    piece: { number: 1, name: 'Garden stool' },
    rank: 'in hand',
  });
  shop.minutesLater(12);
  const done = await shop.json('done', '1');
  expect(done.recorded).toMatch(/ done on 1 Garden stool: 12 min, expected \d+ to \d+ min$/);
  expect(done.recorded.startsWith(sprayed.name)).toBe(true);
  expect(done.row?.windows.length).toBeGreaterThan(0);
  await shop.does('put-down', '1', '--ago', '1 min');

  const { windows } = await shop.json('windows', '1');
  expect(windows.map(({ step }) => step?.name)).toContain(sprayed.name);
  expect(await shop.does('windows')).toContain(sprayed.name);

  shop.minutesLater(3 * 24 * 60);
  expect(await shop.does('ready', '1')).toMatch(/^ready, .* on 1 Garden stool/);

  const hours = await shop.json('hours', '1');
  const own = hours.steps.find(({ id }) => id === sprayed.id);
  expect(own).toMatchObject({ state: 'done', sessions: 1 });
  // In hand for 16 minutes; what of it was setup is the estimate's affair.
  expect(must(must(own).minutes) + must(own).setupMinutes).toBeCloseTo(16, 6);
  expect(await shop.does('hours', '1')).toContain('four times in five');

  const card = await shop.json('job-card', '1');
  const row = card.rows.filter((each) => each.row === 'step').find(({ id }) => id === sprayed.id);
  expect(row?.stamps.map(({ event }) => event)).toEqual(['first-stroke', 'done']);
  expect(row?.air).toMatchObject({ rh: 55 });
  expect(row?.air?.tempC).toBeCloseTo(18.89, 2);
  expect(await shop.does('job-card', '1')).toContain('Job card: 1 Garden stool');

  const before = await shop.json('bench');
  expect(await shop.does('take-back')).toContain('taken back: ready, turn over on 1 Garden stool');
  expect(await shop.does('take-back')).toContain('taken back: put down');
  expect((await shop.json('bench')).rows[0]?.rank).toBe('in hand');
  expect(await shop.does('bring-back')).toContain('brought back: put down');
  expect(await shop.does('bring-back')).toContain(
    'brought back: ready, turn over on 1 Garden stool',
  );
  expect(await shop.json('bench')).toEqual(before);
  expect(await shop.refuses('bring-back')).toEqual({
    code: 1,
    says: 'Not brought back: nothing was taken back last.',
  });
});
