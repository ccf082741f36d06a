import { expect, test } from 'vitest';
import { pieceScreen } from '../../../src/views/piece/index.ts';
import type { PieceState } from '../../../src/views/screens.ts';
import { at, rowsOf, snapshotOf, viewOf, Facts, step, type Size } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';
import { stool } from './invented-stool.ts';

const now = at('24 14:27');
const readings = [{ at: at('24 08:00'), tempC: 20, rh: 50 }];

const rinsed = (): Facts =>
  new Facts()
    .piece('23 08:00', 3, 'Beech stool', [
      step('rinse', 'vinegar rinse', { stepClass: 'rinse, neutralise' }),
      step('sand', 'sand 220', { stepClass: 'sand after bleach', needs: ['dry'] }),
    ])
    .done('23 10:00', 3, 'rinse');

const read = (facts: Facts, when: string, spot: 'wood' | 'untouched', percent: number): Facts =>
  facts.tell(when, 'moisture-read', {
    piece: 'p3',
    part: null,
    step: null,
    spot,
    percent,
    air: null,
  });

function shown(facts: Facts, air = readings, size: Size = [80, 24]): string {
  const state: PieceState = { is: 'piece', piece: 'p3', at: null };
  const view = viewOf(snapshotOf(facts.bench(), { readings: air }), now, size);
  return rowsOf(pieceScreen.draw(state, view)).join('\n').replaceAll(/\s+/g, ' ');
}

test('u asks for the meter, and what it comes to stands below the steps', () => {
  const { press, type, text, port } = deskOf({ now, facts: rinsed().list, readings });
  press('3', 'p', 'u');
  expect(text()).toContain('what a moisture meter shows on 3 Beech stool');
  type('wood wet');
  press('enter');
  expect(text()).toContain('Not noted: "wood wet" is no reading of a moisture meter.');
  press(...'wood wet'.split('').map(() => 'backspace'));
  type('wood 12.5, untouched 9');
  press('enter');
  expect(port.piece('p3').moisture).toMatchObject([
    { spot: 'untouched', percent: 9, step: 'sand', air: { tempC: 20, rh: 50 } },
    { spot: 'wood', percent: 12.5, step: 'sand' },
  ]);
  expect(text()).toContain('wood 12.5 %, untouched 9 % on 3 Beech stool: 3.5 over what is at rest');
  expect(text().replaceAll(/\s+/g, ' ')).toContain(
    'moisture wood 12.5 % 14:27, untouched 9 % 14:27: 3.5 over, dry enough to coat at 10 %',
  );
});

test('an untouched spot comes first, and salts are said', () => {
  const facts = read(read(rinsed(), '24 08:00', 'untouched', 9), '24 08:00', 'wood', 10);
  expect(shown(facts)).toContain(
    'moisture wood 10 % 08:00, untouched 9 % 08:00: dry enough to coat what is left of vinegar rinse makes the meter read high: go by the difference',
  );
});

test('for want of one the air decides, with when it was read', () => {
  const text = shown(read(rinsed(), '24 08:00', 'wood', 12.5));
  expect(text).toContain(
    'wood 12.5 % 08:00, 9.3 % by the air, 20 C 50 % read 08:00: 3.2 over, dry enough to coat at 10.3 %',
  );
  expect(text).toContain('makes the meter read high: read an untouched spot');
});

test('with neither it says so', () => {
  expect(shown(read(rinsed(), '24 08:00', 'wood', 12.5), [])).toContain(
    "wood 12.5 % 08:00; nothing to hold it against: read an untouched spot too, or note the shop's air",
  );
});

test('two readings say when, about, and how far off that may be', () => {
  const facts = read(read(rinsed(), '23 14:00', 'untouched', 9), '23 14:00', 'wood', 17);
  expect(shown(read(facts, '24 14:00', 'wood', 13))).toContain(
    "about Thu 14:00 at this rate; Wed 23:00 to Fri 13:00 by the meter's error",
  );
  expect(shown(read(facts, '24 14:00', 'wood', 16.5))).toContain('or much later by the meter');
  expect(shown(read(facts, '24 14:00', 'wood', 17))).toContain(
    'it does not fall: 17 % Mon 14:00, 17 % now',
  );
});

test('wetted since, it asks for another reading', () => {
  const facts = read(read(rinsed(), '23 08:30', 'untouched', 9), '23 08:30', 'wood', 9);
  expect(shown(facts)).toContain(
    'wood 9 % Mon 08:30, before vinegar rinse wetted it: read it again',
  );
});

test('fits everywhere, also while the meter is being read', () => {
  const facts = read(read(stool(), '24 08:00', 'untouched', 9), '24 08:00', 'wood', 17);
  const view = viewOf(snapshotOf(facts.bench(), { readings }), now);
  for (const state of [
    { is: 'piece', piece: 'p3', at: null },
    { is: 'piece', piece: 'p3', at: null, asks: 'moisture', text: 'wood 12' },
  ] as const)
    fitsEverywhere((size) => pieceScreen.draw(state, { ...view, ...size }), /Esc/);
});
