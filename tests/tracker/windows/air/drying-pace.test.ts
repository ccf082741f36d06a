import { describe, expect, test } from 'vitest';
import { day, hour } from '../../../../src/tracker/time/index.ts';
import type { Reading } from '../../../../src/tracker/trade/index.ts';
import {
  airSense,
  dryingPaceAt,
  type Edge,
  type Span,
  type Window,
} from '../../../../src/tracker/windows/index.ts';
import { at } from '../../support/instants.ts';
import { after, go, last, latestOf, milestone, wait } from '../../support/rules.ts';
import { labelSense } from '../../support/sense.ts';

const standard = { tempC: 23, rh: 50 };
/** Half as fast at 13 C, a quarter as fast at 3 C. */
const opening: Span = { ms: 4 * hour, chemistry: 'oxidative', statedFor: standard, may: 'grow' };
const read = (clock: string, tempC: number): Reading => ({ at: at(clock), tempC, rh: 50 });
const sensed = (...readings: readonly Reading[]) => ({
  ...labelSense,
  ...airSense({ readings, nightLowC: null }),
});

/** A coat that went on at 8:00 and opens at noon by an edge of that kind. */
function dryingBy(opensBy: Edge): Window {
  const rule = { ...milestone('scuff', 4 * hour), stretches: [wait, go(opensBy)] };
  return {
    key: 'scuff',
    rule,
    subject: { pieceId: 'table', stepId: 'coat', partId: null, pass: 1, section: 1 },
    begunAt: at('8:00'),
    hangsOn: 'stroke',
    assumed: false,
    stretches: [
      { ...wait, begins: at('8:00'), ends: at('12:00') },
      { ...go(opensBy), begins: at('12:00'), ends: null },
    ],
    foundReadyAt: null,
    closedAt: null,
  };
}
const stroke = last('last-stroke');
const drying = dryingBy(after(stroke, opening));

describe('what the air does to coats that are drying', () => {
  test('is told from the least to the most of them', () => {
    const cured: Span = { ...opening, chemistry: 'two-part' };
    const windows = [
      drying,
      dryingBy(after(stroke, { ...cured, statedFor: { tempC: 18, rh: 50 } })),
    ];
    const pace = dryingPaceAt(windows, at('9:00'), sensed(read('8:00', 13)));
    expect(pace?.most).toBeCloseTo(2, 9);
    // Half a doubling for 5 C less than its label's.
    expect(pace?.least).toBeCloseTo(Math.SQRT2, 9);
  });

  test('counts every part of an opening that is the latest of several', () => {
    const one = dryingBy(latestOf(after(stroke, { ms: day }), after(stroke, opening)));
    expect(dryingPaceAt([one], at('9:00'), sensed(read('8:00', 13)))?.most).toBeCloseTo(2, 9);
  });

  test('is nothing once the coat may be tried, and nothing to what the air does not lengthen', () => {
    const sense = sensed(read('8:00', 13));
    expect(dryingPaceAt([drying], at('12:00'), sense)).toBeNull();
    expect(dryingPaceAt([dryingBy(after(stroke, { ms: hour }))], at('9:00'), sense)).toBeNull();
    expect(
      dryingPaceAt([dryingBy(after(stroke, { ...opening, may: 'shrink' }))], at('9:00'), sense),
    ).toBeNull();
    expect(dryingPaceAt([drying], at('9:00'), labelSense)).toBeNull();
  });
});

describe('the label’s time that went by for a coat', () => {
  const went = (readings: readonly Reading[], from: string, to: string): number =>
    sensed(...readings).labelTime(opening, at(from), at(to)) / hour;

  test('is that of the clock where nothing was read', () => {
    expect(went([], '8:00', '11:00')).toBe(3);
  });

  test('is summed over the readings, each at its own pace, and bounded by no side', () => {
    expect(went([read('7:00', 23), read('9:00', 13)], '8:00', '11:00')).toBeCloseTo(2, 9);
    expect(went([read('8:00', 33)], '8:00', '9:00')).toBeCloseTo(2, 9);
  });

  test('runs as the clock does before the first reading can count', () => {
    // The reading of noon counts back to 8:00.
    expect(went([read('12:00', 13)], '7:00', '9:00')).toBeCloseTo(1.5, 9);
    expect(went([read('12:00', 13)], '5:00', '7:00')).toBe(2);
  });
});
