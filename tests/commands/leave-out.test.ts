import { describe, expect, it } from 'vitest';
import type { WhatIfJson } from '../../src/commands/json-shapes/index.ts';
import { openForWriting } from '../../src/persist/index.ts';
import { createLearning } from '../../src/shell/learning.ts';
import { movePastPieces } from '../../src/shell/move-past.ts';
import { foldBench } from '../../src/tracker/bench/index.ts';
import { must } from './support/must.ts';
import { openShop, type Shop } from './support/shop.ts';

/** So many pieces, the first step of each done in an hour. */
async function worked(pieces: number): Promise<Shop> {
  const shop = openShop({ now: '2026-11-23T08:00:00-05:00' });
  for (let number = 1; number <= pieces; number++) {
    await shop.does('add', `Chest ${number}`, '--schedule', 'paint-and-wax');
    await shop.does('pick-up', String(number));
    shop.minutesLater(60);
    await shop.does('done', String(number));
    await shop.does('put-down');
  }
  await shop.does('add', 'Next chest', '--schedule', 'paint-and-wax');
  return shop;
}

const firstStep = async (shop: Shop, piece: string) =>
  must((await shop.json('hours', piece)).steps[0]);

describe('minutes that were taught', () => {
  it('are expected of the next piece, and stored when its step is done', async () => {
    const shop = await worked(4);
    const before = (await firstStep(shop, 'Next chest')).estimate;
    expect(before.model).toBe('learned minutes');
    await shop.does('pick-up', 'Next chest');
    shop.minutesLater(50);
    expect(await shop.does('done', 'Next chest')).toMatch(
      /done on 5 Next chest: 50 min, your usual \d+ to \d+ min/,
    );
    await shop.does('put-down');
    expect((await firstStep(shop, 'Next chest')).estimate).toEqual(before);
  });

  it('no longer come from a piece that is left out, until it is taken in again', async () => {
    const shop = await worked(1);
    expect((await firstStep(shop, 'Next chest')).estimate.model).toBe('learned minutes');
    expect(await shop.does('leave-out', 'Chest 1')).toContain('1 Chest 1 left out of learning');
    expect((await firstStep(shop, 'Next chest')).estimate.model).toBe('finishing schedule');
    await shop.does('leave-out', 'Chest 1', '--again');
    expect((await firstStep(shop, 'Next chest')).estimate.model).toBe('learned minutes');
  });

  it('no longer come from a past piece, from the moment it is left out', async () => {
    const shop = await worked(1);
    await shop.does('off-bench', 'Chest 1');
    const clock = { now: () => Date.parse('2026-12-24'), today: () => '2026-12-24' };
    const opened = await openForWriting(shop.folder, { clock });
    if (!opened.ok) throw new Error(opened.problem.says);
    const store = opened.value;
    movePastPieces(store, 'UTC', clock.now());
    const loaded = store.load();
    createLearning(shop.folder).refresh(store, foldBench(loaded.ok ? loaded.value.bench : []), []);
    store.close();
    const modelNow = async () => (await firstStep(shop, 'Next chest')).estimate.model;
    expect(await modelNow()).toBe('learned minutes');
    await shop.does('leave-out', 'Chest 1');
    expect(await modelNow()).toBe('finishing schedule');
    await shop.does('take-back');
    expect(await modelNow()).toBe('learned minutes');
  });

  it('are no usual before there are enough of that class', async () => {
    for (const [pieces, says] of [
      [2, 'expected'],
      [3, 'your usual'],
    ] as const) {
      const shop = await worked(pieces);
      await shop.does('pick-up', 'Next chest');
      const { low, high } = (await firstStep(shop, 'Next chest')).estimate;
      shop.minutesLater(50);
      // The range that was told while it was in hand, not another one.
      expect(await shop.does('done', 'Next chest')).toContain(
        `: 50 min, ${says} ${Math.round(low)} to ${Math.round(high)} min`,
      );
    }
  });

  it('no longer come from one session that is left out', async () => {
    const shop = await worked(1);
    await shop.does('leave-out', 'Chest 1', '--session', '1');
    expect((await firstStep(shop, 'Next chest')).estimate.model).toBe('finishing schedule');
    await shop.does('take-back');
    expect((await firstStep(shop, 'Next chest')).estimate.model).toBe('learned minutes');
  });

  it('refuse a session that is not there', async () => {
    const shop = await worked(1);
    const { says } = await shop.refuses('leave-out', 'Chest 1', '--session', '7');
    expect(says).toContain('Not left out: 1 Chest 1 has no session "7"; it has 1.');
  });
});

describe('what a change would do', () => {
  it('is said without recording anything', async () => {
    const shop = await worked(1);
    const before = (await firstStep(shop, 'Next chest')).estimate;
    const told = await shop.does('leave-out', 'Chest 1', '--what-if', '--json');
    const { classes } = JSON.parse(told) as WhatIfJson;
    expect(must(classes[0]).after).toBe(1);
    expect(await shop.does('leave-out', 'Chest 1', '--session', '1', '--what-if')).toMatch(
      /would become 1\.0 times instead of \d\.\d\nNothing was recorded\./,
    );
    expect(await shop.does('correct-session', '1', '1', '--drop', '--what-if')).toContain(
      'would become 1.0 times',
    );
    expect((await firstStep(shop, 'Next chest')).estimate).toEqual(before);
    expect((await shop.json('sessions', '1')).sessions[0]?.dropped).toBe(false);
  });

  it('tells what a change would do only where it may be made', async () => {
    const shop = await worked(2);
    const early = ['correct-session', '1', '1', '--end', '07:30'];
    const refused = await shop.refuses(...early, '--what-if');
    expect(refused).toEqual({
      code: 1,
      says: 'Not corrected: it would end before it begins.',
    });
    expect(refused).toEqual(await shop.refuses(...early));
    expect(await shop.refuses('leave-out', 'Chest 1', '--again', '--what-if')).toEqual(
      await shop.refuses('leave-out', 'Chest 1', '--again'),
    );
  });
});
