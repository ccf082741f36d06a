import { expect, test } from 'vitest';
import { second } from '../../src/tracker/time/index.ts';
import { at, key, ping, tense } from './support/bench-of.ts';
import { deskOf } from './support/desk-of.ts';

const began = at('12-03 16:41');
const called = '2 Wall shelf: B on, by 16:42. Late: start over.';
const pings = [
  ping('first', '12-03 16:41', '3 Book rack: late.', { loud: true, piece: 'p3' }),
  ping('claim', '12-03 16:41', called, { loud: true, piece: 'p2' }),
];

/** A screen that those keys opened on the cane rocker, some seconds after two loud pings began. */
function calledOn(opening: readonly string[], late = 5 * second) {
  const driven = deskOf({
    now: began - 60 * second,
    facts: tense().list,
    pings,
    settings: { farView: 0 },
  });
  driven.press('6', ...opening);
  expect(driven.port.acknowledged).toEqual([]);
  driven.port.wait(began + late - driven.port.now);
  return { ...driven, one: (name: string) => driven.desk.press([key(name)]) };
}

test.each([
  ['an opened piece', ['p'], 'x'],
  ['the job card', ['j'], 'm'],
  ['the keys', ['k'], 'escape'],
  ['settings', ['u'], 'down'],
  ['the hours', ['m'], 'space'],
  ['shutting up shop', ['v'], 'y'],
  ['a question', ['y'], 'y'],
  ['an open field, by Enter', ['o', '5'], 'enter'],
] as const)('on %s any key silences and does nothing else', (_, opening, name) => {
  const { desk, port, one, text } = calledOn(opening);
  const { is } = desk.top();
  expect(is).not.toBe('bench');
  expect(text()).toContain(`!! ${called}`);
  const asked = port.asked.length;
  const before = desk.top();
  one(name);
  expect(port.acknowledged).toEqual(['claim', 'first']);
  expect(port.acknowledgements, 'one write for all').toBe(1);
  expect(desk.top()).toEqual(before);
  expect(port.asked).toHaveLength(asked);
  expect(text()).toContain('silenced, press again');
  expect(text()).not.toContain('!!');
});

test('the bench beneath has the pinged piece selected, for the next key', () => {
  const { desk, one, press } = calledOn(['k']);
  one('x');
  press('escape');
  expect(desk.top()).toMatchObject({ is: 'bench', selected: 'p2' });
});

test('in a field the key is written, and that it silenced stands while one writes', () => {
  const { desk, port, type, press, text } = calledOn(['w']);
  expect(desk.top()).toMatchObject({ is: 'note', text: '' });
  type('dr');
  expect(port.acknowledged).toEqual(['claim', 'first']);
  expect(desk.top()).toMatchObject({ is: 'note', text: 'dr' });
  expect(text()).toContain(`silenced: ${called}`);
  type('y rot');
  expect(text()).toContain(`silenced: ${called}`);
  press('enter');
  expect(desk.top()).toMatchObject({ is: 'bench', selected: 'p2' });
  expect(text()).not.toContain('silenced');
});

test('a paste into a field is written and silences', () => {
  const { desk, port } = calledOn(['w']);
  desk.paste('hinge');
  expect(desk.top()).toMatchObject({ is: 'note', text: 'hinge' });
  expect(port.acknowledgements).toBe(1);
});

test('a key that was on its way when it began still acts', () => {
  const { desk, port, one } = calledOn(['k'], 200);
  one('escape');
  expect(desk.top()).toMatchObject({ is: 'bench' });
  expect(port.acknowledged).toEqual([]);
});

test('a number on an open list picks nothing, in whichever order list and desk hear of it', () => {
  for (const deskFirst of [true, false]) {
    const { desk, port, press, pick, list, text } = calledOn([]);
    port.wait(-30 * second);
    press('3', 't');
    expect(list().length).toBeGreaterThan(0);
    port.wait(began + 5 * second - port.now);
    if (deskFirst) desk.listHeard();
    pick(2);
    if (!deskFirst) desk.listHeard();
    expect(desk.top()).toMatchObject({ is: 'trouble' });
    expect(port.acknowledgements).toBe(1);
    expect(text()).toContain('silenced, press again');
    port.wait(2 * second);
    pick(2);
    expect(desk.top()).toMatchObject({ is: 'bench' });
  }
});
