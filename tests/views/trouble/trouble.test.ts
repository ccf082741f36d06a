import { expect, test } from 'vitest';
import { troubleScreen } from '../../../src/views/trouble/index.ts';
import type { TroubleState } from '../../../src/views/screens.ts';
import { afternoon, at, Facts, recoat, snapshotOf, step, viewOf } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import type { WindowRule } from '../../../src/tracker/windows/index.ts';

const now = at('24 15:10');
const readings = [{ at: at('24 13:40'), tempC: 15, rh: 65 }];

/** The stool's second coat went on at 11:00 and off the brush at 11:22. */
function inTrouble(): DrivenDesk {
  const driven = deskOf({ now: now - 4000, facts: afternoon().list, readings });
  driven.press('3', 't');
  return driven;
}

test('asks what it showed, with what is known of the coat', () => {
  const { rows, list, text } = inTrouble();
  expect(rows()[0]).toBe(
    'trouble: 3 Beech stool, clear coat 2 of 3, 3 h 48 after last stroke, 15 C 65 %',
  );
  expect(text()).toContain('What did it show?');
  expect(text()).toContain('The label comes first. Trouble teaches the drying times nothing.');
  expect(list()).toEqual([
    '1 still tacky, soft     warm the shop, a night more; else strip back',
    '2 runs, sags            wait for scuff, level with 320, coat thinner',
    '3 nibs, dust            scuff 400, tack off',
    '4 fisheye, craters      wash, scuff, barrier coat; test on a sample board',
    '5 bleed, stain through  scuff, blocking primer, then coat again',
    '6 blush, white haze     warm dry air for a day; if it stays, scuff, recoat',
    '7 wrinkle, lifts        leave 3 days, strip back, barrier coat, again',
    '8 none of these         write what it was',
    '9 no trouble            back, nothing noted',
  ]);
});

test('a number notes it and puts its steps in after the coat', () => {
  const { pick, port, desk, text } = inTrouble();
  pick(2);
  expect(desk.top()).toMatchObject({ is: 'bench', selected: 'p3' });
  expect(port.piece('p3').checks).toMatchObject([
    { finding: 'trouble', shown: 'runs, sags', step: 'coat', air: { tempC: 15, rh: 65 } },
  ]);
  expect(port.steps('p3')).toEqual([
    'clear coat 2 of 3',
    'level runs with 320 on a block',
    'clear coat 2 of 3, again, thinner',
    'next coat',
  ]);
  expect(text()).toContain('trouble, clear coat 2 of 3 on 3 Beech stool; 2 steps put in');
});

test('one key takes it all back', () => {
  const { pick, press, port } = inTrouble();
  pick(4);
  expect(port.steps('p3')).toHaveLength(6);
  press('0');
  expect(port.steps('p3')).toEqual(['clear coat 2 of 3', 'next coat']);
  expect(port.piece('p3').checks).toEqual([]);
});

test('Esc notes the trouble without steps', () => {
  const { press, port, desk } = inTrouble();
  press('escape');
  expect(desk.top().is).toBe('bench');
  expect(port.piece('p3').checks).toMatchObject([{ finding: 'trouble', shown: null }]);
  expect(port.steps('p3')).toHaveLength(2);
});

test('nine takes a key back that was pressed by mistake', () => {
  const { pick, port, desk } = inTrouble();
  pick(9);
  expect(desk.top().is).toBe('bench');
  expect(port.asked).toEqual([]);
});

test('what is on no list is written', () => {
  const { pick, press, type, text, list, port } = inTrouble();
  pick(8);
  expect(list()).toEqual([]);
  press('enter');
  expect(text()).toContain('Not noted: say what it showed.');
  type('cat hair');
  expect(text()).toContain('it showed  cat hair_');
  press('escape');
  expect(list()).toHaveLength(9);
  pick(8);
  type('cat hair all over');
  press('enter');
  expect(port.piece('p3').checks).toMatchObject([
    { finding: 'trouble', shown: 'cat hair all over' },
  ]);
  expect(port.steps('p3')).toHaveLength(2);
});

test('a piece on which nothing dries has nothing to try', () => {
  const { press, text, port, desk, list } = deskOf({ now, facts: afternoon().list });
  press('6', 't');
  expect(text()).toContain('Nothing on 6 Cane rocker is drying or setting');
  expect(list()).toEqual([]);
  press('enter', '2', 'd');
  expect(desk.top().is).toBe('trouble');
  press('escape');
  expect(desk.top().is).toBe('bench');
  expect(port.asked).toEqual([]);
});

test('what sets in clamps has troubles of its own', () => {
  const clamps: WindowRule = {
    ...recoat(hour, null),
    kind: 'glue',
    verb: 'clamps off',
    milestone: 'clamps off',
  };
  const facts = new Facts()
    .piece('24 08:00', 1, 'Chair', [
      step('glue', 'left rail', { windows: [clamps], stepClass: 'reglue' }),
      step('next', 'sand', { needs: ['clamps off'] }),
    ])
    .stamp('24 14:00', 1, 'glue', 'first-stroke')
    .done('24 14:10', 1, 'glue');
  const { press, list, pick, port } = deskOf({ now, facts: facts.list });
  press('t');
  expect(list().map((label) => label.split('  ')[0])).toEqual([
    '1 joint stands open',
    '2 glue white, crumbly',
    '3 stays soft, rubbery',
    '4 none of these',
    '5 no trouble',
  ]);
  pick(1);
  expect(port.steps('p1')).toEqual([
    'left rail',
    'joint apart, old glue off to bare wood',
    'left rail, again',
    'sand',
  ]);
});

test('fits everywhere, and the list turns its page where it does not', () => {
  const facts = afternoon().tell('24 11:30', 'step-reworded', {
    piece: 'p3',
    step: 'coat',
    name: `\u001b[2J${'a long name '.repeat(9)}`,
  });
  const view = { ...viewOf(snapshotOf(facts.bench(), { readings }), now) };
  const state: TroubleState = { is: 'trouble', piece: 'p3', part: null };
  for (const each of [
    state,
    { ...state, from: 3 },
    { ...state, text: 'x'.repeat(200) },
    { ...state, piece: 'p6' },
    { ...state, piece: 'gone' },
  ])
    fitsEverywhere((size) => troubleScreen.draw(each, { ...view, ...size }), /Esc/);
  const { list, pick } = inTrouble();
  const low = [32, 10] as const;
  const pages: string[] = [];
  for (let page = 0; page < 5; page += 1) {
    pages.push(...list(low).slice(0, -1));
    pick(list(low).length, low);
  }
  expect(pages.filter((label) => label.includes('blush')).length).toBeGreaterThan(0);
  expect(pages.some((label) => label.includes('none of these'))).toBe(true);
});
