import { describe, expect, it } from 'vitest';
import { hoursOfFinished } from '../../../src/tracker/estimate/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step, type InventedShop } from './invented-shop.ts';

const at = (minutes: number): number => monday + minutes * minute;
const strip = step('strip', {
  stepClass: 'strip',
  minutes: { typical: 50, low: 30, high: 80 },
});
const bleach = step('bleach', {
  stepClass: 'bleach',
  minutes: { typical: 20, low: 15, high: 30 },
});

/** A finished piece whose stripping took so many minutes. */
function finish(shop: InventedShop, name: string, took: number, from: number): string {
  const id = shop.add(name, scheduleOf([strip]), at(from));
  shop.work(id, from, from + took);
  shop.act({ do: 'take off bench', piece: id }, at(from + took + 1));
  return id;
}

describe('hours over finished pieces', () => {
  it('gives the median and the 80 % range of actual by estimate, one figure a piece', () => {
    const shop = inventShop();
    // Ratios .8 1 1.2 1.4 1.6; type 7 at .1 and .9: .88 and 1.52 by hand.
    for (const [index, took] of [40, 50, 60, 70, 80].entries())
      finish(shop, `Piece ${index}`, took, index * 200);
    const { classes, whole, pieces } = hoursOfFinished([shop.bench()], at(5000));
    const [lean] = classes;
    expect(pieces).toHaveLength(5);
    expect(lean).toMatchObject({ stepClass: 'strip', pieces: 5 });
    expect(lean?.ratio).toBeCloseTo(1.2, 9);
    expect(lean?.range?.low).toBeCloseTo(0.88, 9);
    expect(lean?.range?.high).toBeCloseTo(1.52, 9);
    expect(whole.ratio).toBeCloseTo(1.2, 9);
  });

  it('gives no range from fewer than three pieces, and nothing where nothing is known', () => {
    const shop = inventShop();
    finish(shop, 'Hat rack', 60, 0);
    const side = shop.add('Side table', scheduleOf([bleach]), at(300));
    const { classes } = hoursOfFinished([shop.bench()], at(5000));
    expect(classes).toMatchObject([
      { stepClass: 'strip', pieces: 1, range: null },
      { stepClass: 'bleach', pieces: 0, ratio: null, range: null, steps: [] },
    ]);
    shop.act({ do: 'remove piece', piece: side }, at(310));
    const rangeWith = (name: string, from: number) => {
      finish(shop, name, 60, from);
      return hoursOfFinished([shop.bench()], at(5000)).whole.range;
    };
    expect(rangeWith('Shelf', 400)).toBeNull();
    expect(rangeWith('Tray', 600)).not.toBeNull();
  });

  it('leaves out pieces in work and removed ones, and counts a piece with every step done', () => {
    const shop = inventShop();
    const kept = finish(shop, 'Hat rack', 60, 0);
    const removed = finish(shop, 'Side table', 160, 200);
    shop.act({ do: 'remove piece', piece: removed }, at(400));
    const curing = shop.add('Walnut tray', scheduleOf([strip]), at(500));
    shop.work(curing, 500, 540);
    const inWork = shop.add('Oak settle', scheduleOf([strip, bleach]), at(600));
    shop.work(inWork, 600, 690);
    const { pieces } = hoursOfFinished([shop.bench()], at(5000));
    expect(pieces.map(({ piece }) => piece.id)).toEqual([kept, curing]);
  });

  it('counts a piece once where two files have it', () => {
    const shop = inventShop();
    finish(shop, 'Hat rack', 60, 0);
    const bench = shop.bench();
    expect(hoursOfFinished([bench, bench], at(5000)).whole.pieces).toBe(1);
  });

  it('puts the furthest off first, in either direction, with its note', () => {
    const shop = inventShop();
    finish(shop, 'Near', 55, 0);
    const slow = finish(shop, 'Slow', 100, 200);
    finish(shop, 'Fast', 20, 400);
    shop.act(
      { do: 'write note', piece: slow, step: 'strip', text: 'two layers of paint' },
      at(600),
    );
    const { whole } = hoursOfFinished([shop.bench()], at(5000));
    expect(whole.steps.map(({ piece }) => piece.name)).toEqual(['Fast', 'Slow', 'Near']);
    expect(whole.steps[1]?.note?.text).toBe('two layers of paint');
  });

  it('counts how often the stored range held, and what chance it had claimed', () => {
    const shop = inventShop();
    for (const [index, took] of [29, 30, 80, 81, 50].entries())
      finish(shop, `Piece ${index}`, took, index * 200);
    const { held } = hoursOfFinished([shop.bench()], at(5000));
    expect(held).toMatchObject({ held: 3, of: 5 });
    // Adding up tenths leaves a trace that no program that reads it should meet.
    expect(held.claimed).toBe(0.8);
  });

  it('has nothing to say of an empty shop, in so many nulls', () => {
    const nothing = hoursOfFinished([inventShop().bench()], at(0));
    expect(nothing).toEqual({
      pieces: [],
      whole: { pieces: 0, ratio: null, range: null, steps: [] },
      classes: [],
      held: { held: 0, of: 0, claimed: null },
      since: null,
      until: null,
    });
  });
});
