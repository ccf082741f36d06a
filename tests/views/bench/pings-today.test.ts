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

it('tells the last four pings and the last three checks of today, of what is on the bench', () => {
  const now = at('24 14:29');
  const checked = (piece: string, finding: 'ready' | 'not yet') => ({
    piece,
    part: null,
    step: 'wax',
    window: 'w',
    finding,
    air: null,
  });
  const facts = new Facts()
    .piece('24 07:00', 3, 'Pine box', [step('wax', 'wax')])
    .piece('24 07:01', 4, 'Ash box', [step('wax', 'wax')])
    .tell('23 10:00', 'checked', checked('p3', 'not yet'))
    .tell('24 08:01', 'checked', checked('p3', 'not yet'))
    .tell('24 08:02', 'checked', checked('p3', 'not yet'))
    .tell('24 08:03', 'checked', checked('p4', 'not yet'))
    .tell('24 08:04', 'checked', checked('p3', 'not yet'))
    .tell('24 08:05', 'checked', checked('p3', 'ready'))
    .tell('24 08:06', 'piece-left-bench', { piece: 'p4' });
  const pings = [
    ping('y', '23 14:00', 'told yesterday'),
    ...[1, 2, 3, 4, 5].map((hour) => ping(`${hour}`, `24 1${hour - 1}:00`, `told at ${hour}`)),
  ];
  const snapshot = snapshotOf(facts.bench(), { pings });
  const rows = rowsOf(benchScreen.draw(benchStart(now), viewOf(snapshot, now, wide)));
  const from = rows.findIndex((row) => row.startsWith('pings today'));
  expect(rows.slice(from, from + 7).map((row) => row.trimEnd())).toEqual([
    'pings today   11:00  told at 2',
    '              12:00  told at 3',
    '              13:00  told at 4',
    '              14:00  told at 5',
    'checks today  08:02  3 Pine box: not yet',
    '              08:04  3 Pine box: not yet',
    '              08:05  3 Pine box: ready',
  ]);
});

it('tells none of yesterday where there were few today', () => {
  const now = at('24 14:29');
  const pings = [ping('y', '23 23:59', 'told yesterday'), ping('t', '24 09:00', 'told today')];
  const facts = new Facts().piece('23 09:00', 3, 'Pine box', [step('wax', 'wax')]);
  const view = viewOf(snapshotOf(facts.bench(), { pings }), now, wide);
  const text = rowsOf(benchScreen.draw(benchStart(now), view)).join('\n');
  expect(text).toContain('pings today   09:00  told today');
  expect(text).not.toContain('told yesterday');
});
