import fc from 'fast-check';
import { expect, test } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { oddTimerScreen } from '../../../src/views/odd-timer/index.ts';
import { readTimer } from '../../../src/views/odd-timer/read-timer.ts';
import { afternoon, at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

const now = at('24 14:29');

function timing(): DrivenDesk {
  const driven = deskOf({ now, facts: afternoon().list });
  driven.press('6', 'o');
  return driven;
}

test('starts a timer on the selected piece', () => {
  const { press, type, text, port, desk } = timing();
  expect(text()).toContain('on     6 Cane rocker');
  type('clamps, 35 min');
  expect(text()).toContain('timer  clamps, 35 min_');
  expect(text()).toContain('clamps, 35 min, till 15:04');
  press('enter');
  expect(desk.top().is).toBe('bench');
  expect(port.bench.timers).toMatchObject([{ label: 'clamps', ms: 35 * minute, piece: 'p6' }]);
  expect(text()).toContain('clamps, 35 min on 6 Cane rocker');
});

test('Tab gives it to another piece, or to none', () => {
  const { press, type, text, port } = timing();
  press('tab');
  expect(text()).toContain('on     7 Walnut tray');
  press('up', 'up');
  expect(text()).toContain('on     5 Garden bench');
  press('down', 'down', 'down', 'down');
  expect(text()).toContain('on     no piece: a row of its own');
  type('tea 4 min');
  press('enter');
  expect(port.bench.timers).toMatchObject([{ label: 'tea', piece: null }]);
});

test('a refusal keeps what was typed', () => {
  const { press, type, text, port } = timing();
  type('clamps, 90x');
  press('enter');
  expect(text()).toContain('Not started: "90x": "x" is no unit of time here.');
  expect(text()).toContain('timer  clamps, 90x_');
  expect(port.bench.timers).toEqual([]);
  press('escape');
  expect(port.asked).toEqual([]);
});

test.each([
  ['clamps, 35 min', 'clamps', 35],
  ['35 clamps', 'clamps', 35],
  ['35 min, clamps', 'clamps', 35],
  ['clamps 1 h 20', 'clamps', 80],
  ['1 h 20 clamps', 'clamps', 80],
  ['clamps 1,5 h', 'clamps', 90],
  ['clamps 1:20', 'clamps', 80],
  ['2 doors 35 min', '2 doors', 35],
  ['2 doors, 35', '2 doors', 35],
  ['glue, left rail, 1:20', 'glue, left rail', 80],
  ['epoxy 5 min, 2 h', 'epoxy 5 min', 120],
])('reads %j', (text, label, minutes) => {
  expect(readTimer(text)).toEqual({ ok: true, label, ms: minutes * minute });
});

test.each([
  ['', 'nothing was given.'],
  ['35 min', 'say what it is for.'],
  ['35, 40', 'say what it is for.'],
  ['clamps', 'there is no length of time in it.'],
  ['clamps, soon', 'there is no length of time in it.'],
  ['clamps, -5', '"-5" is no length of time.'],
  ['clamps 1:99', '"1:99" has 99 minutes in its hour; 59 is the most.'],
  ['2 doors 35', '"2 doors 35" may be 2 or 35: put a comma between.'],
])('refuses %j', (text, says) => {
  const read = readTimer(text);
  expect(read.ok ? 'read' : read.says).toContain(says);
});

test('whatever is typed is read with a label and a length, or refused', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      const read = readTimer(text);
      if (read.ok) {
        expect(read.label.trim()).not.toBe('');
        expect(read.ms).toBeGreaterThan(0);
      } else expect(read.says).toMatch(/Write /);
    }),
  );
});

test('fits everywhere', () => {
  const view = viewOf(snapshotOf(afternoon().bench()), now);
  fitsEverywhere(
    (size) =>
      oddTimerScreen.draw(
        { is: 'odd timer', text: `\u0000${'clamp '.repeat(30)}35 min`, piece: 'p3' },
        { ...view, ...size },
      ),
    /Esc: no timer/,
  );
});
