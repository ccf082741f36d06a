import { describe, expect, it } from 'vitest';
import { leftRunning, type LeftRunning } from '../../../src/tracker/estimate/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step, type InventedShop } from './invented-shop.ts';

const at = (minutes: number): number => monday + minutes * minute;
const sand = step('sand', { minutes: { typical: 40, low: 25, high: 70 }, setupMinutes: 10 });

function pickedUp(): { readonly shop: InventedShop; readonly stool: string } {
  const shop = inventShop();
  const stool = shop.add('Beech stool', scheduleOf([sand, step('scuff')]), at(-10));
  shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(0));
  return { shop, stool };
}

function look(shop: InventedShop, stool: string, now: number): LeftRunning | null {
  const bench = shop.bench();
  const [session] = bench.sessions;
  if (session === undefined) throw new Error('there is a session');
  return leftRunning(bench, shop.piece(stool), session, at(now));
}

describe('a session left running', () => {
  it('is none as long as the work may take', () => {
    const { shop, stool } = pickedUp();
    shop.act({ do: 'put down', piece: stool }, at(79));
    expect(look(shop, stool, 100)).toBeNull();
  });

  it('is offered to end after the last key before the quiet, with the time to clean up after done', () => {
    const { shop, stool } = pickedUp();
    shop.act({ do: 'done', piece: stool, part: null }, at(45));
    shop.act({ do: 'put down', piece: stool }, at(150));
    expect(look(shop, stool, 200)).toMatchObject({
      quiet: { from: at(45), to: at(150) },
      trimTo: at(50),
    });
  });

  it('is doubted though its beginning was corrected while it ran, until its end was looked at', () => {
    const { shop, stool } = pickedUp();
    const [session] = shop.bench().sessions;
    const correct = { do: 'correct session', session: session?.id ?? '' } as const;
    shop.act({ ...correct, start: at(-5) }, at(5));
    shop.act({ do: 'put down', piece: stool }, at(150));
    expect(look(shop, stool, 200)).not.toBeNull();
    shop.act({ ...correct, end: at(145) }, at(160));
    expect(look(shop, stool, 200)).toBeNull();
  });

  it('is offered to end after the expected minutes where nothing but the pick-up was told', () => {
    const { shop, stool } = pickedUp();
    shop.act({ do: 'put down', piece: stool }, at(150));
    expect(look(shop, stool, 200)?.trimTo).toBe(at(50));
  });

  it('counts keys on other pieces as a sign of life', () => {
    const { shop, stool } = pickedUp();
    const rack = shop.add('Book rack', scheduleOf([sand]), at(40));
    for (const minutes of [80, 120, 160])
      shop.act({ do: 'write note', piece: rack, step: null, text: 'seen' }, at(minutes));
    shop.act({ do: 'put down', piece: stool }, at(160));
    expect(look(shop, stool, 200)).toBeNull();
  });

  it('is pointed out past twice what its work takes at most, and ends after the "done" in it', () => {
    const { shop, stool } = pickedUp();
    const rack = shop.add('Book rack', scheduleOf([sand]), at(40));
    shop.act({ do: 'done', piece: stool, part: null }, at(60));
    for (const minutes of [100, 140])
      shop.act({ do: 'write note', piece: rack, step: null, text: 'seen' }, at(minutes));
    shop.act({ do: 'put down', piece: stool }, at(165));
    expect(look(shop, stool, 200)).toMatchObject({ quiet: null, trimTo: at(65) });
  });

  it('is pointed out past three hours even with keys all along, and then nothing is offered', () => {
    const { shop, stool } = pickedUp();
    for (let minutes = 50; minutes < 200; minutes += 50)
      shop.act({ do: 'write note', piece: stool, step: null, text: 'seen' }, at(minutes));
    shop.act({ do: 'put down', piece: stool }, at(190));
    expect(look(shop, stool, 200)).toMatchObject({ quiet: null, trimTo: null });
  });

  it('is not offered to end as soon as it began, where "done" came with the pick-up', () => {
    const shop = inventShop();
    const quick = step('quick', { minutes: { typical: 5, low: 3, high: 9 }, setupMinutes: 0 });
    const stool = shop.add('Beech stool', scheduleOf([quick, step('scuff')]), at(-10));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(0));
    shop.act({ do: 'done', piece: stool, part: null }, at(0));
    for (const minutes of [40, 80])
      shop.act({ do: 'write note', piece: stool, step: null, text: 'seen' }, at(minutes));
    shop.act({ do: 'put down', piece: stool }, at(100));
    expect(look(shop, stool, 200)).toMatchObject({ quiet: null, trimTo: null });
  });

  it('is seen while it still runs', () => {
    const { shop, stool } = pickedUp();
    expect(look(shop, stool, 60)).toBeNull();
    expect(look(shop, stool, 90)).toMatchObject({ trimTo: at(50) });
  });

  it('is not doubted again once it was corrected, and changes nothing by itself', () => {
    const { shop, stool } = pickedUp();
    shop.act({ do: 'put down', piece: stool }, at(150));
    const before = shop.facts();
    const session = shop.bench().sessions[0];
    expect(look(shop, stool, 200)).not.toBeNull();
    expect(shop.facts()).toBe(before);
    shop.act({ do: 'correct session', session: session?.id ?? '', end: at(150) }, at(210));
    expect(look(shop, stool, 220)).toBeNull();
  });
});
