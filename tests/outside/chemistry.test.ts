import { expect, test } from 'vitest';
import { readRules } from '../../src/persist/schedules/index.ts';
import { readScheduleFolders } from '../../src/persist/schedules/index.ts';

const templates = new URL('../../templates/', import.meta.url).pathname;
const { rules } = await readRules({ built: null, templates });
const library = await readScheduleFolders({ built: null, templates, own: null });

/** Standard atomic weights, abridged to four figures and more (IUPAC 2021, from memory). */
const weights: Readonly<Record<string, number>> = {
  H: 1.008,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  Na: 22.99,
  S: 32.06,
  Cl: 35.45,
};

/** Grams to a mole of a formula without brackets: `C2H4O2`. */
function molarMass(formula: string): number {
  return [...formula.matchAll(/([A-Z][a-z]?)(\d*)/g)].reduce(
    (sum, [, element = '', count = '']) =>
      sum + (weights[element] ?? Number.NaN) * Number(count || 1),
    0,
  );
}

const takes = (left: string): number => {
  const grams = rules.neutralisers.find((each) => each.left === left)?.takes?.grams;
  if (grams === undefined) throw new Error(`no amount for ${left}`);
  return grams;
};

test('molar masses: water 18.015, caustic soda 39.997 (CRC Handbook, from memory)', () => {
  expect(molarMass('H2O')).toBeCloseTo(18.015, 3);
  expect(molarMass('NaOH')).toBeCloseTo(39.997, 3);
});

test('1 g of lye takes 30.0 g of 5 % vinegar: NaOH + CH3COOH -> CH3COONa + H2O', () => {
  const acid = molarMass('C2H4O2') / molarMass('NaOH');
  expect(acid).toBeCloseTo(1.501, 3);
  expect(takes('lye')).toBeCloseTo(acid / 0.05, 1);
});

test('1 g of oxalic acid dihydrate takes 1.333 g of bicarbonate: one acid, two NaHCO3', () => {
  const soda = (2 * molarMass('NaHCO3')) / molarMass('C2H6O6');
  expect(takes('oxalic acid')).toBeCloseTo(soda, 3);
});

test('1 g of hypochlorite takes up to 6.7 g of thiosulfate crystals: two to one, to tetrathionate', () => {
  const crystals = molarMass('Na2S2O3') + 5 * molarMass('H2O');
  expect(takes('chlorine bleach')).toBeCloseTo((2 * crystals) / molarMass('NaOCl'), 1);
  // Four to one, to sulfate, takes the least: the figure told is the one that suffices in any case.
  expect(takes('chlorine bleach')).toBeGreaterThan(crystals / 4 / molarMass('NaOCl'));
});

test.each([
  ['lye', ['bicarbonate or borax', 'ammonia']],
  ['oxalic acid', ['vinegar', 'chlorine bleach']],
  ['chlorine bleach', ['vinegar', 'oxalic acid', 'ammonia']],
])('%s has the wrong partners of the trade (common practice, no source): %j', (left, wrong) => {
  expect(rules.neutralisers.find((each) => each.left === left)?.wrong).toEqual(wrong);
});

/** Washington State Department of Health, warning on mixing bleach, second hand; the rest from memory, marked so. */
const health = ['vinegar', 'oxalic acid', 'ammonia', 'peroxide'];
const memory = [
  ['chlorine bleach', 'alcohol or acetone'],
  ['peroxide', 'alcohol or acetone'],
  ['peroxide', 'vinegar'],
  ['lye', 'methylene chloride'],
  ['thiosulfate', 'vinegar'],
];
const sourceOf = (one: string, other: string): string | undefined =>
  rules.pairs.find(({ of }) => of.includes(one) && of.includes(other))?.source;

test.each(health)('chlorine bleach and %s: the state health department warns', (other) => {
  expect(sourceOf('chlorine bleach', other)).toContain('Department of Health');
});

test.each(memory)('%s and %s: a danger from memory, marked so', (one = '', other = '') => {
  expect(sourceOf(one, other)).toBe('from memory');
});

test('no neutraliser of chlorine bleach is an acid, as newspapers have told (seen in three; wrong and dangerous)', () => {
  const right = rules.neutralisers.find(({ left }) => left === 'chlorine bleach')?.right ?? '';
  expect(right).toContain('water');
  expect(right).not.toMatch(/vinegar|acid|lemon/i);
});

test('the legal top of heat guns in the US is named as such, and as no setting (40 CFR 745.85(a)(3))', () => {
  const says = rules.cautions.find(({ id }) => id === 'heat-gun')?.says ?? '';
  expect(says).toMatch(/US, 1100 F \(593 C\), is no setting: stay well under/);
  expect(Math.round(((1100 - 32) * 5) / 9)).toBe(593);
});

test('the year of the lead ban is that of 16 CFR 1303, effective 28 Feb 1978', () => {
  expect(rules.leadBefore).toBe(1978);
});

test('every product whose rags heat by themselves is one that the rules keep from peroxide', () => {
  const oily = rules.chemicals.find(({ name }) => name === 'oily rags')?.products ?? [];
  const missing = Object.values(library.products)
    .filter(({ selfHeatingRags }) => selfHeatingRags === true)
    .map(({ productClass }) => productClass)
    .filter((each) => !oily.includes(each));
  expect(missing).toEqual([]);
});
