import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dryingLogLikelihood,
  foreseenDrying,
  learnDrying,
  learnedOpening,
  usualDryingPrior,
  type TriedCoat,
} from '../../../src/tracker/learning/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import {
  fitsInR,
  partsCracking,
  radiotherapy,
  withChemotherapy,
  type Bracket,
} from './censored-data.ts';
import { inventedShops } from './invented-shops.ts';
import { heldAlong, heldLeftOut } from './tried-coats.ts';

const published = { radiotherapy, withChemotherapy, partsCracking };

/** In units of one, so that the offset is the centre of the logarithms. */
const coatsOf = (brackets: readonly Bracket[]): readonly TriedCoat[] =>
  brackets.map(([notYetAt, readyAt]) => ({ notYetAt, readyAt, expected: 1 }));

/** Climbs by ever smaller steps. */
function highest(coats: readonly TriedCoat[]): { centre: number; spread: number } {
  let [centre, spread] = [3, 1];
  for (let step = 1; step > 1e-7; step /= 2) {
    for (let climbs = true; climbs;) {
      const from = dryingLogLikelihood(coats, centre, spread);
      const next = [
        [centre + step, spread],
        [centre - step, spread],
        [centre, spread + step],
        [centre, Math.max(1e-3, spread - step)],
      ].find(([c = 0, s = 0]) => dryingLogLikelihood(coats, c, s) > from);
      climbs = next !== undefined;
      [centre = centre, spread = spread] = next ?? [];
    }
  }
  return { centre, spread };
}

describe('the likelihood of checks', () => {
  it.each(Object.entries(fitsInR))('agrees with the published fit: %s', (name, fit) => {
    const coats = coatsOf(published[name as keyof typeof published]);
    expect(dryingLogLikelihood(coats, fit.centre, fit.spread)).toBeCloseTo(fit.logLikelihood, 6);
    const found = highest(coats);
    expect(found.centre).toBeCloseTo(fit.centre, 4);
    expect(found.spread).toBeCloseTo(fit.spread, 4);
  });

  it('takes conditions as a known factor: twice the time expected and needed is the same finding', () => {
    const coats = coatsOf(withChemotherapy);
    const doubled = coats.map(({ notYetAt, readyAt }) => ({
      notYetAt: 2 * notYetAt,
      readyAt: readyAt === null ? null : 2 * readyAt,
      expected: 2,
    }));
    expect(dryingLogLikelihood(doubled, 3, 0.6)).toBeCloseTo(dryingLogLikelihood(coats, 3, 0.6), 9);
  });
});

const coat = (notYetAt: number, readyAt: number | null, expected = 120): TriedCoat => ({
  notYetAt,
  readyAt,
  expected,
});

describe('learned drying times', () => {
  it('start at the label, and move to where coats are found ready', () => {
    expect(foreseenDrying(learnDrying([]), 120, 0.5)).toBeCloseTo(120, 6);
    const quick = learnDrying(Array.from({ length: 6 }, () => coat(60, 80)));
    expect(foreseenDrying(quick, 120, 0.5)).toBeGreaterThan(62);
    expect(foreseenDrying(quick, 120, 0.5)).toBeLessThan(88);
    // Twice the label's time in a cold shop moves what is expected along.
    expect(foreseenDrying(quick, 240, 0.5)).toBeCloseTo(2 * foreseenDrying(quick, 120, 0.5), 6);
  });

  it('move later on "not yet" alone', () => {
    const slow = learnDrying([coat(180, null), coat(200, null)]);
    expect(foreseenDrying(slow, 120, 0.5)).toBeGreaterThan(150);
    expect(slow).toMatchObject({ coats: 2, found: 0 });
  });

  it('are not moved far by one odd coat among many', () => {
    const usual = Array.from({ length: 8 }, (_, i) => coat(100 + 2 * i, 120 + 2 * i));
    const before = foreseenDrying(learnDrying(usual), 120, 0.5);
    const after = foreseenDrying(learnDrying([...usual, coat(1500, 1600)]), 120, 0.5);
    expect(after / before).toBeLessThan(1.06);
  });

  it('learn nothing from checks that contradict each other or say nothing', () => {
    const none = [coat(90, 60), coat(60, 60), coat(0, null), coat(-5, 20), coat(NaN, 60)];
    none.push(coat(30, 60, 0), coat(30, 60, NaN), coat(Number.POSITIVE_INFINITY, null));
    expect(learnDrying(none)).toEqual(learnDrying([]));
  });

  it('give ordered, finite times after any checks', () => {
    const time = fc.oneof(
      fc.double({ min: 0, max: 5000, noNaN: true }),
      fc.constantFrom(0, 1e-9, 1e12, -1, NaN),
    );
    const anyCoat = fc.record({
      notYetAt: time,
      readyAt: fc.option(time),
      expected: fc.double({ min: 1, max: 3000, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(anyCoat, { maxLength: 8 }), (coats) => {
        const learned = learnDrying(coats);
        const [low = NaN, middle = NaN, high = NaN] = [0.1, 0.5, 0.9].map((p) =>
          foreseenDrying(learned, 100, p),
        );
        expect(low).toBeGreaterThan(0);
        expect(middle).toBeGreaterThanOrEqual(low);
        expect(high).toBeGreaterThanOrEqual(middle);
        expect(high).toBeLessThan(Number.POSITIVE_INFINITY);
      }),
      { numRuns: 40 },
    );
  });

  // Few products and shops here; all of them, and thousands of coats, in `npm run measure drying`.
  it.each(inventedShops.filter(({ centre, spread }) => centre === 1 && spread === 0.3))(
    'hold about four in five of the next coats of a product: $habit.name',
    (shop) => {
      for (const { past, share } of heldAlong(shop, [0, 1, 4, 8], 16, 7)) {
        expect(share, `after ${past}`).toBeGreaterThan(0.76);
        // Little is known at first, and the range says so.
        expect(share, `after ${past}`).toBeLessThan(past < 4 ? 0.97 : 0.93);
      }
    },
    60_000,
  );

  it('hold as many after sixteen', () => {
    const shop = inventedShops.find(({ centre, spread }) => centre === 1.5 && spread === 0.3);
    expect(shop).toBeDefined();
    for (const { share } of shop === undefined ? [] : heldAlong(shop, [16], 12, 7)) {
      expect(share).toBeGreaterThan(0.76);
      expect(share).toBeLessThan(0.93);
    }
  });

  it('are about as wide for a coat that was left out of its own history', () => {
    const shop = inventedShops.find(({ centre, spread }) => centre === 1.5 && spread === 0.3);
    expect(shop).toBeDefined();
    if (shop === undefined) return;
    const held = heldLeftOut(shop, 9, 12, 5);
    expect(held).toBeGreaterThan(0.74);
    expect(held).toBeLessThan(0.94);
  });

  it('count an odd coat among those to come, as among those that were', () => {
    const regular = Array.from({ length: 20 }, () => coat(118, 122));
    const late = (oddShare: number) =>
      foreseenDrying(learnDrying(regular, { ...usualDryingPrior, oddShare }), 120, 0.995);
    expect(late(0.02)).toBeGreaterThan(1.5 * late(0));
  });

  it('tell a steady product from one whose coats differ, by eight of them', () => {
    const width = (coats: readonly TriedCoat[]) => {
      const learned = learnDrying(coats);
      return foreseenDrying(learned, 120, 0.9) / foreseenDrying(learned, 120, 0.1);
    };
    const differing = [60, 75, 90, 110, 130, 160, 190, 230].map((at) => coat(at - 5, at + 5));
    const steady = Array.from({ length: 8 }, (_, i) => coat(110 + i, 122 + i));
    expect(width(steady)).toBeLessThan(1.35);
    expect(width(differing)).toBeGreaterThan(2.5);
  });
});

describe('a learned opening', () => {
  const label = 120 * minute;
  const openingAfter = (coats: readonly TriedCoat[], maySooner = true) =>
    learnedOpening(label, maySooner, coats, learnDrying(coats));
  const quick = Array.from({ length: 8 }, () => coat(80, 90));

  it('comes sooner than the label where it may, and enough coats were found ready', () => {
    const opening = openingAfter(quick);
    expect(opening?.ms).toBeLessThan(label);
    expect(opening?.ms).toBeGreaterThan(85 * minute);
    expect(opening?.coats).toBe(8);
    expect(openingAfter(quick.slice(0, 4))).toBeNull();
    expect(openingAfter(quick, false)).toBeNull();
  });

  it('never comes sooner than half the label', () => {
    expect(openingAfter(Array.from({ length: 20 }, () => coat(35, 40)))?.ms).toBe(label / 2);
  });

  it('comes later by three coats, one of them found not yet at the label', () => {
    const slow = [coat(120, 170), coat(130, 180), coat(150, 190)];
    for (const maySooner of [true, false])
      expect(openingAfter(slow, maySooner)?.ms).toBeGreaterThan(170 * minute);
    expect(openingAfter(slow.slice(0, 2))).toBeNull();
  });

  it('needs as many found ready as it asks for, not only tried, to come sooner', () => {
    const four = quick.slice(0, 4);
    const givenUp: TriedCoat = { notYetAt: 20, readyAt: null, expected: 120 };
    expect(openingAfter([...four, givenUp])).toBeNull();
    expect(openingAfter(quick.slice(0, 5))?.ms).toBeLessThan(label);
  });

  it('comes no later for coats none of which was still soft at the label', () => {
    expect(openingAfter(Array.from({ length: 6 }, () => coat(110, 230)))).toBeNull();
    // Exactly at the label is still soft at the label.
    expect(openingAfter(Array.from({ length: 3 }, () => coat(120, 230)))?.ms).toBeGreaterThan(
      label,
    );
  });

  it('stays at the label for coats that were ready whenever they were tried', () => {
    expect(openingAfter(Array.from({ length: 4 }, () => coat(0, 120)))).toBeNull();
    expect(openingAfter([])).toBeNull();
  });
});
