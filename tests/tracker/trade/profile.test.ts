import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedMinutes } from '../../../src/tracker/estimate/index.ts';
import {
  profileFactor,
  profileWords,
  readProfile,
  shapes,
} from '../../../src/tracker/trade/index.ts';
import { step } from '../estimate/invented-shop.ts';

const strip = step('strip', { stepClass: 'strip', driver: 'area' });

describe('the profile of a surface', () => {
  it('is read as it is written', () => {
    const anyProfile = fc.record({
      shape: fc.constantFrom(...shapes),
      share: fc.integer({ min: 1, max: 100 }).map((percent) => percent / 100),
    });
    fc.assert(
      fc.property(anyProfile, (profile) => {
        expect(readProfile(profileWords(profile))).toEqual(profile);
        expect(readProfile(profileWords(profile).toUpperCase())).toEqual(profile);
      }),
    );
  });

  it.each([
    '',
    'round',
    'turned 0 %',
    'turned 101 %',
    'turned -5 %',
    '30 %',
    'turned carved',
    'turned %',
  ])('is not read from "%s"', (typed) => {
    expect(readProfile(typed)).toBeNull();
  });

  // Common practice, no source: flat 1, panels 1.4, turned or moulded 1.8, carved 3, each on its share of the surface.
  it.each([
    ['flat', 1, 1],
    ['panels', 1, 1.4],
    ['turned', 1, 1.8],
    ['carved', 1, 3],
    ['carved', 0.25, 1.5],
    ['turned', 0.5, 1.4],
  ] as const)('%s on %d of it takes %d times as long by hand', (shape, share, times) => {
    const plain = expectedMinutes(strip, { areaM2: 1.2, profile: null });
    const shaped = expectedMinutes(strip, { areaM2: 1.2, profile: { shape, share } });
    for (const end of ['minutes', 'low', 'high'] as const)
      expect(shaped[end] / plain[end]).toBeCloseTo(times, 9);
  });

  it('has no say in what is sprayed, rinsed, or counted by pieces', () => {
    const carved = { shape: 'carved', share: 1 } as const;
    for (const stepClass of ['coat, sprayed', 'rinse, neutralise', 'stain'] as const)
      expect(profileFactor(step('other', { stepClass, driver: 'area' }), carved)).toBe(1);
    expect(profileFactor(step('one', { stepClass: 'strip', driver: 'fixed' }), carved)).toBe(1);
  });
});
