import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedMinutes } from '../../../src/tracker/estimate/index.ts';
import {
  branchesOf,
  counted,
  countFactor,
  countWords,
  mostCounted,
  nothingKnown,
  readCount,
  usualStep,
  whyNotFor,
} from '../../../src/tracker/trade/index.ts';
import { step } from '../estimate/invented-shop.ts';

const off = step('off', { stepClass: 'hardware off', driver: 'fittings' });

describe('what is counted on a piece', () => {
  it('is read as it is written', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...counted),
        fc.integer({ min: 0, max: mostCounted }),
        (what, count) => {
          expect(readCount(countWords(what, count))).toEqual({ [what]: count });
          expect(readCount(`${count} ${what.toUpperCase()}`)).toEqual({ [what]: count });
        },
      ),
    );
    expect(countWords('drawers', 1)).toBe('1 drawer');
    expect(countWords('joints', 0)).toBe('no joints');
  });

  it.each(['', 'fittings', '8', '8 legs', '8fittings', '-1 joints', '1.5 drawers', 'no'])(
    'is not read from "%s"',
    (typed) => {
      expect(readCount(typed)).toBeNull();
    },
  );

  // Common practice, no source: hardware off and bagged 20 min (10 to 40) and back on 25 (12 to 50) on a chest with eight
  // pulls, 2 to 3 minutes each; reglue a joint 30 (15 to 60); ease and fit a drawer 8 (4 to 25).
  it.each([
    ['hardware off', 'fittings', 8, [20, 10, 40]],
    ['hardware off', 'fittings', 2, [5, 2.5, 10]],
    ['hardware on', 'fittings', 24, [75, 36, 150]],
    ['reglue', 'joints', 1, [30, 15, 60]],
    ['reglue', 'joints', 4, [120, 60, 240]],
    ['fit a drawer', 'drawers', 1, [8, 4, 25]],
    ['fit a drawer', 'drawers', 6, [48, 24, 150]],
  ] as const)('%s: minutes by %s, with %d', (stepClass, what, count, [minutes, low, high]) => {
    const work = { id: 'work', ...usualStep('work', stepClass) };
    expect(expectedMinutes(work, { areaM2: 7, [what]: count })).toMatchObject({
      minutes,
      low,
      high,
    });
  });

  it('keeps the minutes where it is not told, and of steps that grow with something else', () => {
    for (const what of counted) {
      expect(countFactor({ driver: what }, {})).toBe(1);
      expect(countFactor({ driver: what }, { [what]: null })).toBe(1);
      expect(countFactor({ driver: 'area' }, { [what]: 40 })).toBe(1);
      expect(countFactor({ driver: 'fixed' }, { [what]: 40 })).toBe(1);
    }
    expect(countFactor(off, { drawers: 40, joints: 12 })).toBe(1);
  });

  it('goes by what the step says that its minutes are for', () => {
    expect(countFactor({ driver: 'joints', minutesFor: 3 }, { joints: 6 })).toBe(2);
    expect(countFactor({ driver: 'drawers' }, { drawers: 6 })).toBe(1.5);
  });

  it('leaves a step out where the piece has none', () => {
    expect(whyNotFor(off, { ...nothingKnown, lacks: ['fittings'] })).toEqual({
      term: 'none',
      of: 'fittings',
    });
    expect(whyNotFor(off, { ...nothingKnown, lacks: ['joints', 'drawers'] })).toBeNull();
    const strip = step('strip', { stepClass: 'strip', driver: 'area' });
    const [only, ...others] = branchesOf([off, strip], { ...nothingKnown, lacks: ['fittings'] });
    expect(others).toEqual([]);
    expect(only?.steps).toEqual([strip]);
  });

  it('does not make nothing of what was worked on all the same', () => {
    expect(countFactor(off, { fittings: 0 })).toBe(1);
  });
});
