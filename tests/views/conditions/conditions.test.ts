import { expect, test } from 'vitest';
import { conditionsScreen } from '../../../src/views/conditions/index.ts';
import { afternoon, at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import type { FakePortOptions } from '../support/fake-port.ts';
import { fitsEverywhere } from '../support/fits.ts';

const now = at('24 14:29');

function reading(more: Partial<FakePortOptions> = {}): DrivenDesk {
  const driven = deskOf({ now, facts: afternoon().list, ...more });
  driven.press('c');
  return driven;
}

test('notes what the meter shows, and shows the last reading beside it', () => {
  const { press, type, text, desk, port } = reading({
    readings: [{ at: at('24 13:40'), tempC: 15, rh: 65 }],
  });
  expect(text()).toContain('last  15 C 65 %, read 13:40');
  type('66F 55%');
  expect(text()).toContain('now   66F 55%_');
  expect(text()).toContain('19 C 55 %');
  press('enter');
  expect(desk.top().is).toBe('bench');
  expect(port.lastReading?.rh).toBe(55);
  expect(port.lastReading?.tempC).toBeCloseTo(18.889, 3);
  expect(text()).toContain('conditions noted: 19 C 55 %');
});

test('in a shop that reads Fahrenheit a bare figure is one, and shown as one', () => {
  const { press, type, text, port } = reading({ shop: { temperature: 'F' } });
  expect(text()).toContain('no reading yet');
  expect(text()).toContain('66F 55%.');
  type('66 55');
  press('enter');
  expect(port.lastReading?.tempC).toBeCloseTo(18.889, 3);
  expect(text()).toContain('conditions noted: 66 F 55 %');
});

test('what can not be read is refused and stays to be mended', () => {
  const { press, type, text, desk, port } = reading({ shop: { temperature: 'F' } });
  type('19 55');
  press('enter');
  expect(text()).toContain('Not noted: 19 could be 19 F or 19 C: write 19F 55% or 19C 55%.');
  expect(text()).toContain('Which one?  1: 19F 55%  2: 19C 55%');
  expect(text()).toContain('now   19 55_');
  press('home', 'right', 'right');
  type('C');
  press('enter');
  expect(desk.top().is).toBe('bench');
  expect(port.lastReading).toMatchObject({ tempC: 19, rh: 55 });
});

test('a figure that could be either is asked about, and one key answers', () => {
  const { press, type, desk, port } = reading();
  type('66 55 surface 16');
  press('enter');
  expect(port.lastReading).toBeUndefined();
  press('2');
  expect(desk.top().is).toBe('bench');
  expect(port.lastReading?.tempC).toBeCloseTo(18.889, 3);
  expect(port.lastReading).toMatchObject({ rh: 55, surfaceC: 16 });
});

test('another key than the two goes on writing', () => {
  const { press, type, text } = reading();
  type('66 55');
  press('enter', 'backspace');
  expect(text()).toContain('now   66 5_');
  expect(text()).not.toContain('Which one?');
});

test('a reading that could not be written says so and is still there', () => {
  const { press, type, text, desk } = reading({
    readingFails: 'Not recorded, nothing lost: disk full. Free 1 MB.',
  });
  type('19C 55%');
  press('enter');
  expect(desk.top().is).toBe('conditions');
  expect(text()).toContain('Not recorded, nothing lost: disk full. Free 1 MB.');
  expect(text()).toContain('now   19C 55%_');
});

test('Esc takes no reading', () => {
  const { press, type, desk, port } = reading();
  type('19C 55%');
  press('escape');
  expect(desk.top().is).toBe('bench');
  expect(port.lastReading).toBeUndefined();
});

test('fits everywhere', () => {
  const view = viewOf(snapshotOf(afternoon().bench()), now);
  fitsEverywhere(
    (size) =>
      conditionsScreen.draw({ is: 'conditions', text: '\u001b19C 55%' }, { ...view, ...size }),
    /Esc: no reading/,
  );
});
