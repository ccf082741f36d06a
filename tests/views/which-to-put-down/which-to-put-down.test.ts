import { expect, test } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { afternoon, at, step } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

/** With a helper, both pairs of hands on a piece: 3 since 15:00:02, 6 since 15:00:06. */
function handsFull(): DrivenDesk {
  const driven = deskOf({
    now: at('24 15:00'),
    facts: afternoon().list,
    settings: { helper: true, farView: 0 },
  });
  while (inHand(driven).length > 0) driven.port.act({ do: 'put down' });
  driven.press('3', 'enter', '6', 'enter');
  expect(inHand(driven)).toEqual(['p3', 'p6']);
  return driven;
}

const inHand = ({ port }: DrivenDesk): readonly string[] =>
  port.bench.sessions
    .filter(({ end }) => end === null)
    .map(({ targets }) => targets[0]?.piece ?? '');

test('the third piece asks which of the two to put down', () => {
  const driven = handsFull();
  driven.press('8', 'enter');
  expect(driven.desk.top()).toMatchObject({ is: 'which to put down' });
  expect(driven.rows()[0]).toBe('which to put down for 8 Hat rack');
  expect(driven.list()).toEqual([
    expect.stringMatching(/^1 Beech stool \[3\], .*, 0 min$/),
    expect.stringMatching(/^2 Cane rocker \[6\], .*, 0 min$/),
  ]);
  expect(driven.text()).toContain('It counts from 15:00, when you pressed.');
});

test('the choice puts that down and picks up, as of the moment of the first press', () => {
  const driven = handsFull();
  driven.press('8', 'enter');
  const pressed = driven.port.now;
  driven.port.wait(7 * minute);
  driven.pick(2);
  expect(driven.desk.top()).toMatchObject({ is: 'bench', selected: 'p8' });
  expect(inHand(driven)).toEqual(['p3', 'p8']);
  const [put, taken] = [driven.port.bench.sessions.at(-2), driven.port.bench.sessions.at(-1)];
  expect(put).toMatchObject({ end: pressed, targets: [{ piece: 'p6' }] });
  expect(taken).toMatchObject({ start: pressed, targets: [{ piece: 'p8' }] });
  expect(driven.text()).toContain('picked up 8 Hat rack');
});

test('a stroke that picks up by itself asks too, and is made once', () => {
  const driven = handsFull();
  const { id: _, ...coat } = step('extra', 'one more coat', {
    stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
  });
  const before8 = driven.port.piece('p8').steps[0]?.id ?? null;
  driven.port.act({ do: 'insert step', piece: 'p8', step: coat, before: before8 });
  driven.press('8', 'f');
  expect(driven.desk.top()).toMatchObject({
    is: 'which to put down',
    intent: { do: 'first stroke', piece: 'p8' },
  });
  const pressed = driven.port.now;
  driven.port.wait(2 * minute);
  driven.pick(1);
  expect(driven.port.piece('p8').stamps).toMatchObject([{ event: 'first-stroke', at: pressed }]);
  expect(inHand(driven)).toEqual(['p6', 'p8']);
});

test('a key that bounces picks nothing', () => {
  const driven = handsFull();
  driven.press('8', 'enter');
  driven.port.wait(200);
  driven.pick(1);
  expect(driven.desk.top()).toMatchObject({ is: 'which to put down' });
  expect(inHand(driven)).toEqual(['p3', 'p6']);
});

test('Esc changes nothing', () => {
  const driven = handsFull();
  driven.press('8', 'enter', 'escape');
  expect(driven.desk.top()).toMatchObject({ is: 'bench' });
  expect(inHand(driven)).toEqual(['p3', 'p6']);
});

test('from the opened piece and with "back to" it asks as well', () => {
  const opened = handsFull();
  opened.press('8', 'p', 'enter');
  expect(opened.desk.top()).toMatchObject({ is: 'which to put down' });
  opened.port.wait(2000);
  opened.pick(1);
  expect(opened.desk.top()).toMatchObject({ is: 'bench' });
  expect(inHand(opened)).toEqual(['p6', 'p8']);
  opened.press('b');
  expect(opened.desk.top()).toMatchObject({
    is: 'which to put down',
    intent: { targets: [{ piece: 'p3' }] },
  });
});

test('where a hand came free at another window the choice only picks up', () => {
  const driven = handsFull();
  driven.press('8', 'enter');
  driven.port.wait(2000);
  const { value } = driven.desk.frame(80, 24).pick?.items[0] ?? { value: '' };
  driven.port.act({ do: 'put down', piece: 'p3' }, driven.port.now - 2000);
  driven.desk.picked(value);
  expect(inHand(driven)).toEqual(['p6', 'p8']);
});

test('fits every terminal', () => {
  const driven = handsFull();
  driven.press('8', 'enter');
  fitsEverywhere(({ columns, rows }) => driven.desk.frame(columns, rows), /Esc/);
});
