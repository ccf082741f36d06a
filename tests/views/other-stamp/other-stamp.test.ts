import { expect, test } from 'vitest';
import { otherStampScreen } from '../../../src/views/other-stamp/index.ts';
import { afternoon, at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

/** The side table's glue has been in clamps since 14:20, for an hour. */
const now = at('24 14:40');

test('one key offers what no sequence expects, and tells what it does to the window', () => {
  const { press, list, pick, port, desk, text } = deskOf({ now, facts: afternoon().list });
  press('4', ';');
  expect(desk.top().is).toBe('other stamp');
  expect(text()).toContain('another stamp: 4 Side table');
  expect(list()).toEqual(['1 clamps off  ends "clamps off", which opens 15:20']);
  pick(1);
  expect(desk.top().is).toBe('bench');
  expect(port.asked.at(-1)).toMatchObject({ do: 'stamp', event: 'clamps-off', step: 'glue' });
  expect(text()).toContain('clamps off 40 min early, glue-up, left rail on 4 Side table');
});

test('so does a number of the list for the numeric pad', () => {
  const { press, desk } = deskOf({ now, facts: afternoon().list });
  press('4', '/', '0');
  expect(desk.top().is).toBe('other stamp');
});

test('where nothing runs that a stamp would change, it says so', () => {
  const { press, list, text, desk } = deskOf({ now, facts: afternoon().list });
  press('6', ';');
  expect(list()).toEqual([]);
  expect(text()).toContain('Nothing runs that another stamp would change.');
  press('escape');
  expect(desk.top().is).toBe('bench');
});

test('fits everywhere', () => {
  for (const [piece, bench] of [
    ['p4', afternoon().bench()],
    ['p6', afternoon().bench()],
    ['gone', afternoon().bench()],
  ] as const) {
    const view = viewOf(snapshotOf(bench), now);
    fitsEverywhere(
      (size) =>
        otherStampScreen.draw({ is: 'other stamp', piece, part: null }, { ...view, ...size }),
      /Esc/,
    );
  }
});
