import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearest } from '../../../src/tracker/trade/index.ts';

const milestones = [
  'dust-free',
  'scuff',
  'recoat',
  'turn over',
  'rub out',
  'refit',
  'wrap',
  'light use',
  'full cure',
];

test.each([
  ['recot', 'recoat'],
  ['Recoat', 'recoat'],
  ['dust free', 'dust-free'],
  ['scuf', 'scuff'],
  ['wrpa', 'wrap'],

  ['turn_over', 'turn over'],
  ['cure', 'full cure'],
])('offers for %s first %s', (typed, meant) => {
  expect(nearest(typed, milestones)[0]).toBe(meant);
});

test('offers nothing for a word that is like none, and nothing for no word', () => {
  expect(nearest('veneer hammer', milestones)).toEqual([]);
  expect(nearest('  ', milestones)).toEqual([]);
});

test('puts one wrong letter before a shared beginning, and that before two wrong letters', () => {
  expect(nearest('oak', ['Oak chest', 'oat', 'ash', 'oak'])).toEqual(['oak', 'oat', 'Oak chest']);
});

test('offers every name at most once, never more than asked for, and finds an exact name first', () => {
  fc.assert(
    fc.property(
      fc.array(fc.string(), { minLength: 1 }),
      fc.nat(),
      fc.integer({ min: 1, max: 5 }),
      (names, pick, most) => {
        const typed = names[pick % names.length] ?? '';
        const offered = nearest(typed, names, most);
        expect(new Set(offered).size).toBe(offered.length);
        expect(offered.length).toBeLessThanOrEqual(most);
        if (typed.trim() === typed && typed !== '' && offered.length > 0) {
          const simple = (text: string) =>
            text
              .trim()
              .toLowerCase()
              .replaceAll(/[\s_-]+/g, ' ');
          expect(simple(offered[0] ?? '')).toBe(simple(typed));
        }
      },
    ),
  );
});
