import { expect, test } from 'vitest';
import type { Reading } from '../../../src/tracker/trade/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import { Facts, at, product, recoat, step } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';

const now = at('24 14:29');

/** A stool whose next step is a coat of shellac, selected on a bench with that reading. */
function shellac(
  readings: readonly Reading[],
  temperature: 'C' | 'F' = 'C',
  cautions: readonly string[] = ['Fumes.'],
): DrivenDesk {
  const facts = new Facts().piece(
    '24 08:00',
    3,
    'Beech stool',
    [step('coat', 'shellac coat', { product: 'shellac' })],
    [product('shellac', [recoat(hour, null)], { chemistry: 'evaporative', cautions })],
  );
  return deskOf({ now, facts: facts.list, readings, shop: { temperature } });
}
const read = (tempC: number, rh: number): Reading => ({ at: at('24 13:40'), tempC, rh });

test('what the air says stands above the cautions, on the bench and in the opened piece', () => {
  const driven = shellac([read(8, 65)]);
  const rows = (): readonly string[] => driven.text().split('\n');
  const shown = (): readonly string[] => rows().filter((row) => /^(air|caution) /.test(row));
  const told = [
    'air      too cold: 8 C, not below 10 C. Warm the shop',
    'air      it may turn white: 65 %, from 60 % on lacquer and shellac blush',
    'caution  Fumes.',
  ];
  driven.press('3');
  expect(shown()).toEqual(told);
  driven.press('p');
  expect(shown()).toEqual(told);
});

test('figures are in the units of the shop', () => {
  const driven = shellac([read(8, 40)], 'F');
  driven.press('3');
  expect(driven.text()).toContain('air      too cold: 46 F, not below 50 F. Warm the shop');
});

test('good air is silent, and so is a step that is done', () => {
  const driven = shellac([read(20, 50)]);
  driven.press('3');
  expect(driven.text()).not.toMatch(/^air /m);
});

test('a piece in hand keeps them in sight', () => {
  const driven = shellac([]);
  driven.press('3', 'enter');
  expect(driven.text()).toMatch(/^air {6}no reading of the air yet/m);
});

test('cautions told one after the other each end before the next begins', () => {
  const driven = shellac([read(20, 50)], 'C', ['no heater near', 'Gloves.']);
  driven.press('3');
  expect(driven.text()).toContain('caution  no heater near. Gloves.');
});
