import { expect, test } from 'vitest';
import { confirmScreen } from '../../../src/views/confirm/index.ts';
import type { ConfirmState } from '../../../src/views/screens.ts';
import { afternoon, at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { FakePort } from '../support/fake-port.ts';
import { fitsEverywhere } from '../support/fits.ts';

const now = at('24 14:29');
const benchWith = (): DrivenDesk => deskOf({ now, facts: afternoon().list });

test('asks before a piece is removed, and says what becomes of its record', () => {
  const { press, rows, port } = benchWith();
  press('6', 'x');
  expect(rows().filter((row) => row !== '')).toEqual([
    'Remove 6 Cane rocker?',
    'Hidden, left out of learning; the record stays.',
    'Still to do: 1 of 1 steps.',
    'y: remove it   n or Esc: keep it',
  ]);
  expect(port.piece('p6').place).toBe('bench');
});

test('y removes it, and take back brings it again', () => {
  const { press, desk, port, text } = benchWith();
  press('6', 'x', 'y');
  expect(desk.top().is).toBe('bench');
  expect(port.piece('p6').place).toBe('removed');
  expect(text()).toContain('6 Cane rocker removed');
  expect(text()).not.toMatch(/^ {2}6 {2}Cane rocker/m);
  press('0');
  expect(port.piece('p6')).toMatchObject({ place: 'bench', number: 6 });
});

test.each(['n', 'escape'])('%s keeps it', (name) => {
  const { press, desk, port } = benchWith();
  press('6', 'x', name);
  expect(desk.top().is).toBe('bench');
  expect(port.asked).toEqual([]);
});

test('no other key answers', () => {
  const { press, desk, port } = benchWith();
  press('6', 'x', 'enter', 'space', 'd', '1', 'x', '0');
  expect(desk.top().is).toBe('confirm');
  expect(port.asked).toEqual([]);
});

test('off the bench says what is given up: hands, steps, pings', () => {
  const { press, text, port } = benchWith();
  press('1', 'y');
  expect(text()).toContain('Take 1 Oak settle off the bench?');
  expect(text()).toContain('It is in hand: it is put down first.');
  expect(text()).toContain('Still to do: 2 of 2 steps.');
  press('n', '3', 'y');
  expect(text()).toContain('A window still runs on it: off the bench nothing pings.');
  press('y');
  expect(port.piece('p3')).toMatchObject({ place: 'past', number: null });
  expect(text()).toContain('3 Beech stool off the bench');
});

test('an odd timer on the piece is no window that is given up', () => {
  const { press, text, port } = benchWith();
  port.act({ do: 'start timer', label: 'clamps', ms: 2_100_000, piece: 'p6' });
  press('6', 'y');
  expect(text()).toContain('Take 6 Cane rocker off the bench?');
  expect(text()).not.toContain('window');
});

test('asked from the opened piece, y goes all the way to the bench and n only back', () => {
  const { press, desk } = benchWith();
  press('3', 'p', 'y', 'n');
  expect(desk.top()).toMatchObject({ is: 'piece', piece: 'p3' });
  press('y', 'y');
  expect(desk.top().is).toBe('bench');
});

test('a past piece is removed without going back further than the list it was found in', () => {
  const port = new FakePort({ now, facts: afternoon().list });
  port.act({ do: 'take off bench', piece: 'p6' });
  const state: ConfirmState = { is: 'confirm', asks: 'remove piece', piece: 'p6' };
  const view = viewOf(port.snapshot(), now);
  const step = confirmScreen.press(state, { name: 'y', text: 'y' }, view, port);
  expect(step.back).toBe(true);
  expect(port.piece('p6').place).toBe('removed');
  const again = confirmScreen.press(state, { name: 'y', text: 'y' }, view, port);
  expect(again.message).toEqual({
    text: 'Not removed: Cane rocker is removed already.',
    refused: true,
  });
});

test('fits everywhere, whatever the name', () => {
  const facts = afternoon().tell('24 09:00', 'piece-described', {
    piece: 'p1',
    changes: { name: `\u001b[2J${'wardrobe '.repeat(12)}\u202e椅子` },
  });
  for (const asks of ['remove piece', 'take off bench'] as const) {
    const view = viewOf(snapshotOf(facts.bench()), now);
    fitsEverywhere(
      (size) => confirmScreen.draw({ is: 'confirm', asks, piece: 'p1' }, { ...view, ...size }),
      /n or Esc: keep it/,
    );
    fitsEverywhere(
      (size) => confirmScreen.draw({ is: 'confirm', asks, piece: 'gone' }, { ...view, ...size }),
      /n or Esc: keep it/,
    );
  }
});
