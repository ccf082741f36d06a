import { expect, test } from 'vitest';
import { whyLateScreen } from '../../../src/views/why-late/index.ts';
import { afternoon, at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

/** The stool's second coat came off the brush at 11:22; by the next noon three times its wait have gone. */
const late = at('25 12:00');
const early = at('24 14:00');

test('a "not yet" far too late is noted, and then asks why', () => {
  const { press, list, text, pick, port, desk } = deskOf({ now: late, facts: afternoon().list });
  press('3', 'n');
  expect(port.piece('p3').checks).toMatchObject([{ finding: 'not yet' }]);
  expect(desk.top().is).toBe('why late');
  expect(text()).toMatch(/not yet: 3 Beech stool, .* times as long as expected/);
  expect(list().map((label) => label.split('  ')[0])).toEqual([
    '1 oily wood',
    '2 too thick',
    '3 old can',
    '4 silicone',
    '5 cold',
    '6 not known',
  ]);
  pick(4);
  expect(desk.top().is).toBe('bench');
  expect(port.piece('p3').lateness).toMatchObject([{ cause: 'silicone' }]);
});

test('Esc, or "not known", keeps the check and says nothing', () => {
  for (const leave of ['escape', 'pick'] as const) {
    const { press, pick, port, desk } = deskOf({ now: late, facts: afternoon().list });
    press('3', 'n');
    if (leave === 'escape') press('escape');
    else pick(6);
    expect(desk.top().is).toBe('bench');
    expect(port.piece('p3').checks).toHaveLength(1);
    expect(port.piece('p3').lateness).toEqual([]);
  }
});

test('one in good time asks nothing', () => {
  const { press, port, desk } = deskOf({ now: early, facts: afternoon().list });
  press('3', 'n');
  expect(desk.top().is).toBe('bench');
  expect(port.piece('p3').checks).toHaveLength(1);
});

test('fits everywhere', () => {
  const driven = deskOf({ now: late, facts: afternoon().list });
  driven.press('3', 'n');
  const view = viewOf(driven.port.snapshot(), late);
  for (const [piece, seen] of [
    ['p3', view],
    ['gone', viewOf(snapshotOf(afternoon().bench()), late)],
  ] as const)
    fitsEverywhere(
      (size) => whyLateScreen.draw({ is: 'why late', piece }, { ...seen, ...size }),
      /Esc/,
    );
});
