import { expect, test } from 'vitest';
import { holdScreen } from '../../../src/views/hold/index.ts';
import type { HoldState } from '../../../src/views/screens.ts';
import { afternoon, at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

const now = at('24 14:29');

function holding(): DrivenDesk {
  const driven = deskOf({ now, facts: afternoon().list });
  driven.press('6', 'h');
  return driven;
}

test('asks what the piece waits for, then when to ask again', () => {
  const { press, type, rows, port, desk, text } = holding();
  expect(rows()[0]).toBe('hold: 6 Cane rocker');
  expect(text()).toContain('A hold stops no window and silences no ping.');
  type('hinge plates');
  expect(text()).toContain('waits for  hinge plates_');
  press('enter');
  type('sat');
  expect(text()).toContain('waits for  hinge plates');
  expect(text()).toContain('ask again  sat_');
  expect(text()).toContain('Sat 28 Nov 2026');
  press('enter');
  expect(desk.top().is).toBe('bench');
  expect(port.piece('p6').hold).toMatchObject({ reason: 'hinge plates', askAgain: '2026-11-28' });
  expect(text()).toContain('hold on 6 Cane rocker: hinge plates');
});

test('the day may be left empty', () => {
  const { press, type, port } = holding();
  type('an answer');
  press('enter', 'enter');
  expect(port.piece('p6').hold).toMatchObject({ reason: 'an answer', askAgain: null });
});

test('a reason is needed, and a day that can be read and has not passed; what was typed stays', () => {
  const { press, type, port, text } = holding();
  press('enter');
  expect(text()).toContain('Not on hold: say what it waits for, so that you are asked for it.');
  type('a dry day');
  press('enter');
  type('soonish');
  press('enter');
  expect(text()).toContain('Not on hold: "soonish" is no day. Write 28 Nov, 2026-11-28, Sat,');
  expect(text()).toContain('ask again  soonish_');
  for (let letter = 0; letter < 7; letter += 1) press('backspace');
  type('2026-11-20');
  press('enter');
  expect(text()).toContain('Not on hold: 2026-11-20 has passed; ask again on a day to come.');
  expect(text()).toContain('ask again  2026-11-20_');
  expect(port.piece('p6').hold).toBeNull();
});

test('Esc goes back a field at a time, and holds nothing', () => {
  const { press, type, text, desk, port } = holding();
  type('hinges');
  press('enter');
  type('sat');
  press('escape');
  expect(text()).toContain('waits for  hinges_');
  press('escape');
  expect(desk.top().is).toBe('bench');
  expect(port.asked).toEqual([]);
});

test('the cursor begins behind the text of each field', () => {
  const { press, type, text } = holding();
  type('hinges');
  press('home', 'enter');
  type('sat');
  press('home', 'escape');
  type('!');
  expect(text()).toContain('waits for  hinges!_');
});

test('h on a piece that is on hold lifts it without asking', () => {
  const { press, port, desk } = deskOf({ now, facts: afternoon().list });
  press('8', 'h');
  expect(desk.top().is).toBe('bench');
  expect(port.piece('p8').hold).toBeNull();
});

test('both fields fit everywhere', () => {
  const view = viewOf(snapshotOf(afternoon().bench()), now);
  const reason = `${'hinge plates and '.repeat(10)}\u0007more`;
  const state: HoldState = { is: 'hold', piece: 'p6', reason, day: null };
  fitsEverywhere((size) => holdScreen.draw(state, { ...view, ...size }), /Esc: no hold/);
  fitsEverywhere(
    (size) => holdScreen.draw({ ...state, day: 'sat' }, { ...view, ...size }),
    /Esc: back/,
  );
});
