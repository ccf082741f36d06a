import { expect, test } from 'vitest';
import { readMoisture, wrongMoisture } from '../../../src/tracker/trade/index.ts';

test.each([
  ['wood 12.5, untouched 9', { wood: 12.5, untouched: 9 }],
  ['12.5 untouched 9', { wood: 12.5, untouched: 9 }],
  ['untouched 9', { untouched: 9 }],
  ['Untouched: 9 %, wood 12,5%', { wood: 12.5, untouched: 9 }],
  ['12.5', { wood: 12.5 }],
  ['12,5 9', { wood: 12.5, untouched: 9 }],
  ['12.5 and 9', { wood: 12.5, untouched: 9 }],
])('%s', (text, read) => {
  expect(readMoisture(text)).toEqual({ ok: true, read });
});

test.each(['', 'wet', '12x', '1.2.3', 'wood', '12 9 7', 'wood 12 wood 9', '-5', '12 %% 9'])(
  'asks again after "%s"',
  (text) => {
    const found = readMoisture(text);
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.says).toMatch(/Write wood 12\.5, untouched 9\.$/);
  },
);

test.each([
  [3.9, /drier than a meter can tell: 4 to 60/],
  [60.1, /dripping wet: 4 to 60/],
  [Number.NaN, /no percentage/],
])('%d can not be', (percent, says) => {
  expect(wrongMoisture(percent)).toMatch(says);
});

test('the ends of the range can be', () => {
  expect([4, 60].map(wrongMoisture)).toEqual([null, null]);
});
