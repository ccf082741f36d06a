import { expect, test } from 'vitest';
import { hour } from '../../../src/tracker/time/index.ts';
import { at, Facts, product, recoat, step } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';

const now = at('24 14:29');

/** A cabinet whose doors are coated one by one. */
function cabinet(coat = 'coat 1') {
  const steps = [
    step('coat', coat, {
      product: 'clear',
      stepClass: 'coat, brushed',
      stamps: [{ event: 'first-stroke', says: 'first stroke' }],
    }),
    step('buff', 'buff'),
  ];
  const clear = product('clear', [], { chemistry: 'waterborne' });
  const facts = new Facts().piece('24 08:00', 1, 'Cabinet', steps, [clear]);
  const driven = deskOf({ now, facts: facts.list, settings: { farView: 0 } });
  driven.port.act({ do: 'name parts', piece: 'p1', names: ['left door', 'right door'] });
  driven.press('tab');
  return { ...driven, foot: () => driven.rows()[22] ?? '' };
}

test('what is in hand, what a key did, and what is taken back, name the part', () => {
  const { press, rows, text, foot } = cabinet();
  press('enter');
  expect(rows()[3]).toContain('in hand  1 Cabinet, left door: coat 1, ');
  expect(text()).toContain('     left door, coat 1, 1 of 2;');
  expect(text()).toContain('picked up 1 Cabinet, left door, coat 1');
  press('space');
  expect(text()).toContain('first stroke, coat 1 on 1 Cabinet, left door');
  press('d');
  expect(text()).toContain('coat 1 done on 1 Cabinet, left door');
  // The keys go on with the other door, while the left one is in hand still.
  expect(foot()).toContain('[1] Cabinet, right door.');
  expect(rows()[3]).toContain('1 Cabinet, left door: coat 1');
  press('0');
  expect(text()).toContain('taken back: coat 1 done on 1 Cabinet, left door.');
});

test('a narrow screen names the part that is in hand, and the one that keys act on', () => {
  const { press, rows } = cabinet();
  press('enter', 'tab');
  expect(rows([46, 20]).join('\n')).toContain('in hand 1 Cabinet, left door, ');
  expect(rows([46, 20]).join('\n')).toContain('[1] right door  Space: ');
  expect(rows([40, 20]).join('\n')).toContain('[1] right door  Space: ');
});

test('where parts stand at different steps, it says that keys act on all of them', () => {
  const { press, foot } = cabinet();
  press('tab', 'tab');
  expect(foot()).toContain('[1] Cabinet.  Space');
  press('tab', 'enter', 'd', 'enter', 'tab');
  expect(foot()).toContain('[1] Cabinet, all parts.  Space');
});

test('a wide screen names every part and what it is at, however long that is called', () => {
  const third = (rows: readonly string[]): string =>
    rows.find((row) => row.includes('step 1 of 2')) ?? '';
  expect(third(cabinet().rows([120, 36]))).toMatch(
    /^ +left door coat 1 {2}right door coat 1 {2}step 1 of 2 {2}came in 08:00$/,
  );
  const long = 'enamel coat 1 of 3, thinned a little, sides first, top last, then the edges';
  expect(third(cabinet(long).rows([120, 36]))).toMatch(
    /^ +left door enamel coat 1.*… {2}right door enamel coat 1.*… {2}step 1 of 2 {2}came in 08:00$/,
  );
});

test('a look into the opened piece leaves the part selected', () => {
  const { press, foot } = cabinet();
  press('p', 'escape');
  expect(foot()).toContain('[1] Cabinet, left door.');
});

test('what comes next names the part whose window it is, on a narrow screen too', () => {
  const steps = [
    step('coat', 'coat 1', { windows: [recoat(2 * hour, null)] }),
    step('next', 'coat 2', { needs: ['recoat'] }),
  ];
  const facts = new Facts().piece('24 08:00', 1, 'Cabinet', steps);
  const { port, press, rows } = deskOf({ now, facts: facts.list, settings: { farView: 0 } });
  port.act({ do: 'name parts', piece: 'p1', names: ['left door', 'right door'] });
  press('tab', 'tab', 'enter', 'd', 'enter');
  expect(rows()[1]).toMatch(/^next {5}1 Cabinet, right door: try it from 16:/);
  expect(rows([46, 20])[1]).toMatch(/^next {4}1 Cabinet, right d…: try it from 16:/);
});
