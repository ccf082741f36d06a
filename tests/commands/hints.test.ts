import { expect, it } from 'vitest';
import { comeTo } from './support/come-to.ts';
import { openShop } from './support/shop.ts';

/** Names of keys, as refusals at the screen tell what to press. */
const pressed = /\b(Enter|Space|Esc)\b|\. [a-z0-9] [a-z]|\([a-z], then [a-z]\)/;

it.each([
  [[], ['first-stroke', '1'], 'has no stroke to put on. pick-up takes it in hand.'],
  [[['pick-up', '2']], ['put-down', '1'], '2 Elm chair is. put-down 2 puts that down.'],
  [[], ['next-section', '1'], 'not worked in sections. next-stamp makes the one that is next.'],
  [
    [
      ['pick-up', '1'],
      ['done', '1'],
    ],
    ['skip-step', '1', '1'],
    'take-back takes it back.',
  ],
  [
    [
      ['pick-up', '1'],
      ['put-down', '--ago', '1min'],
    ],
    ['pick-up', '2', '--ago', '5min'],
    'Correct that session first with correct-session.',
  ],
])('after %j, %j is refused without a word of keys', async (before, line, says) => {
  const shop = openShop({ now: '2026-11-24T08:00:00-05:00' });
  for (const name of ['Oak chest', 'Elm chair'])
    await shop.does('add', name, '--schedule', 'glue-up-repair');
  for (const each of before) {
    await shop.does(...each);
    shop.minutesLater(3);
  }
  const refused = await shop.refuses(...line);
  expect(refused).toMatchObject({ code: 1, says: expect.stringContaining(says) });
  expect(refused.says).not.toMatch(pressed);
});

it('tells what to do when every step is done', async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
  const { steps } = await shop.json('steps', '1');
  for (const { id, state } of steps) if (state !== 'skipped') await shop.does('skip-step', '1', id);
  for (const line of ['next-stamp', 'done', 'first-stroke']) {
    const { says } = await shop.refuses(line, '1');
    expect(says).toMatch(/every step of 1 Oak chest is done\. insert-step puts one in\.$/);
  }
});

it('tells what to do when the first stroke is on', async () => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear');
  await comeTo(shop, 'coat, brushed');
  await shop.does('first-stroke', '1');
  const { says } = await shop.refuses('first-stroke', '1');
  expect(says).toMatch(/ is on\. done when it is all on\.$/);
});
