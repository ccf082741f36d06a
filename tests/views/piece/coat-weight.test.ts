import { expect, test } from 'vitest';
import { pieceScreen } from '../../../src/views/piece/index.ts';
import { at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';
import { rawStool, stool } from './invented-stool.ts';

const now = at('24 14:27');

test('g tells of the last coat how heavy it went on, and the card shows it', () => {
  const { press, list, text, pick, port } = deskOf({ now, facts: stool().list });
  press('3', 'p', 'g');
  expect(text()).toContain('how heavy did it go on? 3 Beech stool, clear coat 2 of 3');
  expect(list().map((label) => label.split('  ')[0])).toEqual(['1 thin', '2 normal', '3 heavy']);
  pick(3);
  expect(port.piece('p3').coatWeights).toMatchObject([{ step: 'coat2', pass: 1, weight: 'heavy' }]);
  port.wait(2000);
  expect(text()).toContain('but      a heavy coat: it dries slower than these figures say');
  press('g');
  expect(list()[2]).toMatch(/so far$/);
  press('escape');
  port.wait(2000);
  press('j');
  expect(text().replaceAll(/\s+/g, ' ')).toContain('heavy coat');
});

test('the marked coat is meant where it is on', () => {
  const { press, text } = deskOf({ now, facts: stool().list });
  press('3', 'p', 'home', 'page down', 'up', 'up', 'g');
  expect(text()).toContain('clear coat 1 of 3');
});

test('with no coat on there is nothing to tell', () => {
  const { press, text, list } = deskOf({ now, facts: rawStool().list });
  press('3', 'p', 'g');
  expect(list()).toEqual([]);
  expect(text()).toContain('Not noted: no coat is on 3 Beech stool yet.');
});

test('fits everywhere', () => {
  const view = viewOf(snapshotOf(stool().bench()), now);
  const state = { is: 'piece', piece: 'p3', at: null, asks: 'coat' } as const;
  fitsEverywhere((size) => pieceScreen.draw(state, { ...view, ...size }), /Esc/);
});
