import { describe, expect, it } from 'vitest';
import { openShop, type Shop } from './support/shop.ts';

const withPiece = async (): Promise<Shop> => {
  const shop = openShop();
  await shop.does('add', 'Oak chest', '--schedule', 'glue-up-repair');
  return shop;
};

const names = async (shop: Shop): Promise<readonly string[]> =>
  (await shop.json('steps', '1')).steps.map(({ name }) => name);

describe('the steps of a piece', () => {
  it('are shown with what they take, the next one marked', async () => {
    const shop = await withPiece();
    const text = await shop.does('steps', '1');
    expect(text).toContain('1 Oak chest   Glue-up repair');
    const list = await names(shop);
    expect(text).toMatch(new RegExp(`^> +1 ${list[0]?.slice(0, 12) ?? ''}`, 'm'));
    const { toGo } = await shop.json('hours', '1');
    const range = `${Math.round(toGo?.low ?? 0)} to ${Math.round(toGo?.high ?? 0)}`;
    expect(text).toMatch(new RegExp(`^ +so far +0 +to go ${range}, 4 times in 5$`, 'm'));
  });

  it('take one more, before the one that is next as long as nothing is said', async () => {
    const shop = await withPiece();
    const [first, second, ...rest] = await names(shop);
    await shop.does('insert-step', '1', 'plug', 'the', 'dowel', 'hole', '--minutes', '25');
    await shop.does('insert-step', '1', 'wipe', '--before', '3');
    await shop.does('insert-step', '1', 'label it', '--last', '--class', 'photograph, list');
    expect(await names(shop)).toEqual([
      'plug the dowel hole',
      first,
      'wipe',
      second,
      ...rest,
      'label it',
    ]);
    const { steps } = await shop.json('steps', '1');
    expect(steps[0]).toMatchObject({ stepClass: 'other', state: 'to do' });
    expect(steps[0]?.estimate).toMatchObject({ minutes: 25 });
    expect(steps[0]?.estimate.low).toBeLessThan(25);
    expect(steps[0]?.estimate.high).toBeGreaterThan(25);
    expect(steps.at(-1)).toMatchObject({ stepClass: 'photograph, list' });
  });

  it.each([
    [['--class', 'sandin'], 64, 'there is no class of work "sandin".'],
    [['--minutes', '1:99'], 64, '"1:99" has 99 minutes in its hour'],
    [['--before', '99'], 2, '1 Oak chest has no step "99".'],
    [['--before', '2', '--last'], 64, 'give --before or --last, not both.'],
  ])('take none with %j', async (options, code, says) => {
    const shop = await withPiece();
    const before = await names(shop);
    const refused = await shop.refuses('insert-step', '1', 'plug', ...options);
    expect(refused.code).toBe(code);
    expect(refused.says).toContain(`Not inserted: ${says}`);
    expect(await names(shop)).toEqual(before);
  });

  it('are repeated, moved, skipped, put back and reworded', async () => {
    const shop = await withPiece();
    const [first = '', second = '', third = '', ...rest] = await names(shop);
    await shop.does('repeat-step', '1', '2');
    expect(await names(shop)).toEqual([first, second, `${second}, again`, third, ...rest]);
    await shop.does('move-step', '1', '3', '--before', '1');
    expect(await names(shop)).toEqual([`${second}, again`, first, second, third, ...rest]);
    await shop.does('reword-step', '1', '1', 'look', 'again');
    await shop.does('move-step', '1', 'look again');
    expect((await names(shop)).at(-1)).toBe('look again');
    await shop.does('skip-step', '1', 'look again');
    expect((await shop.json('steps', '1')).steps.at(-1)?.state).toBe('skipped');
    await shop.does('skip-step', '1', 'look again', '--undo');
    expect((await shop.json('steps', '1')).steps.at(-1)?.state).toBe('to do');
    expect((await shop.refuses('skip-step', '1', 'look again', '--undo')).code).toBe(1);
  });

  it('that are left out already are said to be, and why', async () => {
    const shop = openShop();
    await shop.does('add', 'Oak chest', '--schedule', 'bleach-and-clear', '--year', '1990');
    const { says } = await shop.refuses('skip-step', '1', 'lead test');
    expect(says).toBe('Not skipped: lead test, 3 spots is left out already (made 1990).');
  });
});
