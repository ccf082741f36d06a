import { expect, it } from 'vitest';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import {
  at,
  Facts,
  ping,
  rowsOf,
  shop,
  snapshotOf,
  step,
  viewOf,
  type Size,
} from '../support/bench-of.ts';

const wide: Size = [120, 36];
const text = 'While recoat was closed: 3 Pine box: light use since Mon 13:00, 2 days ago, as said';

const rowsWith = (hours: '12' | '24'): readonly string[] => {
  const now = at('24 14:29');
  const facts = new Facts().piece('24 09:00', 3, 'Pine box', [step('wax', 'wax')]);
  const pings = [
    ping('a', '24 09:05', text, { seenAt: at('24 09:20') }),
    ping('b', '24 13:10', text, { seenAt: at('24 13:20') }),
  ];
  const snapshot = snapshotOf(facts.bench(), { pings, shop: { ...shop, hours } });
  return rowsOf(benchScreen.draw(benchStart(now), viewOf(snapshot, now, wide)));
};

it('tells the pings of today as wide as the screen is, with their clocks in a column', () => {
  expect(rowsWith('24')).toEqual(
    expect.arrayContaining([
      `pings today   09:05  ${text}      seen 09:20`,
      `              13:10  ${text}      seen 13:20`,
    ]),
  );
  const [first = '', second = ''] = rowsWith('12').filter((row) => row.includes('seen'));
  expect(first).toMatch(/^pings today {4}9:05 am {2}While .* days ago, .* {2}seen 9:20 am$/);
  expect(second).toMatch(/^ {15}1:10 pm {2}While .* {2}seen 1:20 pm$/);
  expect(Math.max(...rowsWith('12').map((row) => row.length))).toBeLessThanOrEqual(120);
});
