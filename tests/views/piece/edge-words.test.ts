import { expect, test } from 'vitest';
import type { EdgeReason } from '../../../src/tracker/windows/index.ts';
import { edgeWords } from '../../../src/views/piece/edge-words.ts';
import { labelLength } from '../../../src/views/parts/label-length.ts';
import { afternoon, at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';

const view = viewOf(snapshotOf(afternoon().bench()), at('24 14:29'));
const damp = viewOf(
  snapshotOf(afternoon().bench(), { readings: [{ at: at('24 13:40'), tempC: 15, rh: 65 }] }),
  at('24 14:29'),
);

const stamp = { events: ['first-stroke'], which: 'first', agent: 'A' } as const;
const root: EdgeReason['root'] = { by: 'stamp', choice: stamp, at: at('24 13:10'), assumed: false };
const span = (ms: number, lasts = ms): EdgeReason['spans'][number] => ({ span: { ms }, lasts });
const reason = (more: Partial<EdgeReason>): EdgeReason => ({ root, spans: [], at: 0, ...more });

test.each([
  [reason({ spans: [span(10 * minute)] }), 'label 10 min, from A first stroke 13:10'],
  [reason({}), 'from A first stroke 13:10'],
  [
    reason({ spans: [span(10 * minute), span(5 * minute)] }),
    'label 10 min, then 5 min, from A first stroke 13:10',
  ],
  [reason({ root: { by: 'clock', time: '07:30', at: at('25 07:30') } }), 'at 07:30'],
  [reason({ root: { by: 'check', finding: 'ready', at: at('24 14:05') } }), 'found ready 14:05'],
  [
    reason({
      root: { by: 'check', finding: 'not yet', at: at('24 14:05') },
      spans: [span(30 * minute)],
    }),
    'not yet at 14:05, 30 min more',
  ],
  [
    reason({
      root: { by: 'stamp', choice: stamp, at: at('23 09:00'), assumed: true },
      spans: [span(24 * hour)],
    }),
    'label 24 h, from pick-up Mon 09:00, assumed',
  ],
])('%# is told as %s', (told, words) => {
  expect(edgeWords(told, view)).toBe(words);
});

test('a figure that the air changed by a twentieth or more has its factor', () => {
  const slower = reason({ spans: [span(2 * hour, 3.8 * hour)] });
  expect(edgeWords(slower, damp)).toBe('label 2 h x 1.9 for 15 C 65 %, from A first stroke 13:10');
  expect(edgeWords(slower, view)).toBe('label 2 h x 1.9, from A first stroke 13:10');
  const hardly = reason({ spans: [span(2 * hour, 2.04 * hour)] });
  expect(edgeWords(hardly, damp)).toBe('label 2 h, from A first stroke 13:10');
  const shorter = reason({ spans: [span(2 * hour, hour)] });
  expect(edgeWords(shorter, damp)).toContain('2 h x 0.5');
});

test.each([
  [0, '0 min'],
  [90 * 1000, '2 min'],
  [45 * minute, '45 min'],
  [60 * minute, '1 h'],
  [90 * minute, '90 min'],
  [110 * minute, '1 h 50'],
  [230 * minute, '3 h 50'],
  [24 * hour, '24 h'],
  [26 * hour + 10 * minute, '26 h'],
  [72 * hour, '72 h'],
  [7 * 24 * hour, '7 d'],
  [21 * 24 * hour, '21 d'],
])('%d ms as a label gives it', (ms, words) => {
  expect(labelLength(ms)).toBe(words);
});
