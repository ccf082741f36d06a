import { describe, expect, it } from 'vitest';
import { must } from './support/must.ts';
import { openShop, type Shop } from './support/shop.ts';

const withPieces = async (...names: readonly string[]): Promise<Shop> => {
  const shop = openShop();
  for (const name of names) await shop.does('add', name, '--schedule', 'glue-up-repair');
  return shop;
};

describe('a piece', () => {
  it.each([
    ['2', 'Oak chest'],
    ['oak CHEST', 'Oak chest'],
    ['oak-chest', 'Oak chest'],
    ['2 Oak chest', 'Oak chest'],
    ['oak c', 'Oak chest'],
    ['Elm', 'Elm chair'],
    // A whole name comes before a beginning.
    ['Oak', 'Oak'],
  ])('is found by %j', async (typed, name) => {
    const shop = await withPieces('Elm chair', 'Oak chest', 'Oak');
    const { row } = await shop.json('pick-up', typed);
    expect(row?.piece?.name).toBe(name);
  });

  it('is not guessed between two that begin alike', async () => {
    const shop = await withPieces('Oak chest', 'Oak chair');
    expect(await shop.refuses('done', 'oak')).toEqual({
      code: 2,
      says: 'Not done: "oak" could be 2 pieces. Write more of the name, or the number. Nearest: 1 Oak chest, 2 Oak chair.',
    });
    expect(await shop.refuses('done', 'oak ch')).toMatchObject({ code: 2 });
    expect((await shop.json('pick-up', 'oak che')).row?.piece?.number).toBe(1);
  });

  it('is told apart by its number where two have one name', async () => {
    const shop = await withPieces('Chair', 'Chair');
    expect((await shop.refuses('pick-up', 'Chair')).says).toContain('Nearest: 1 Chair, 2 Chair.');
    expect((await shop.json('pick-up', '2')).row?.piece?.number).toBe(2);
  });

  it.each(['', ' ', '3', 'Beech'])('is not found by %j', async (typed) => {
    const shop = await withPieces('Elm chair', 'Oak chest');
    expect(await shop.refuses('pick-up', typed)).toMatchObject({
      code: 2,
      says: expect.stringContaining(`Not picked up: there is no piece "${typed}".`),
    });
  });

  it('may be called by a number that no piece wears', async () => {
    const shop = await withPieces('1950', 'Elm chair');
    expect((await shop.json('pick-up', '1950')).row?.piece?.number).toBe(1);
  });
});

describe('a step', () => {
  it('is found by its place, its name, and the beginning of that', async () => {
    const shop = await withPieces('Elm chair');
    const { steps } = await shop.json('steps', '1');
    const third = must(steps[2]);
    for (const typed of ['3', third.name, third.id, third.name.slice(0, 12)]) {
      await shop.does('skip-step', '1', typed);
      expect((await shop.json('steps', '1')).steps[2]?.state).toBe('skipped');
      await shop.does('take-back');
    }
  });

  it('that is none is refused with the nearest', async () => {
    const shop = await withPieces('Elm chair');
    const { steps } = await shop.json('steps', '1');
    const { name } = must(steps[0]);
    const misspelt = name.charAt(1) + name.charAt(0) + name.slice(2);
    const { code, says } = await shop.refuses('pick-up', '1', '--step', misspelt);
    expect(code).toBe(2);
    expect(says).toBe(`Not picked up: 1 Elm chair has no step "${misspelt}". Nearest: 1 ${name}.`);
  });
});

describe('a part', () => {
  it('is found by its name, and else refused with the nearest', async () => {
    const shop = await withPieces('Desk');
    await shop.does('parts', '1', 'case', 'left door', 'drawers');
    expect((await shop.json('pick-up', '1', '--part', 'left')).recorded).toContain('1 Desk');
    const { sessions } = await shop.json('sessions', '1');
    expect(sessions[0]?.targets[0]?.part?.name).toBe('left door');
    expect(await shop.refuses('pick-up', '1', '--part', 'drawer s')).toMatchObject({
      says: 'Not picked up: 1 Desk has no part "drawer s". Nearest: drawers.',
    });
    expect((await shop.refuses('done', '1', '--part', 'legs')).code).toBe(2);
  });
});
