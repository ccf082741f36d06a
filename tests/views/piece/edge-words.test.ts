import { expect, test } from 'vitest';
import type { CountedSpan, EdgeReason, SpanAir } from '../../../src/tracker/windows/index.ts';
import { edgeWords } from '../../../src/views/piece/edge-words.ts';
import { labelLength } from '../../../src/views/parts/label-length.ts';
import { afternoon, at, snapshotOf } from '../support/bench-of.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';

const now = at('24 14:29');
const { shop } = snapshotOf(afternoon().bench());
const read = { at: at('24 13:40'), tempC: 15, rh: 65 };

const stamp = { events: ['first-stroke'], which: 'first', agent: 'A' } as const;
const root: EdgeReason['root'] = { by: 'stamp', choice: stamp, at: at('24 13:10'), assumed: false };
const span = (ms: number): CountedSpan => ({ span: { ms }, lasts: ms, own: null, air: null });
const inAir = (ms: number, lasts: number, more: Partial<SpanAir> = {}): EdgeReason =>
  reason({
    spans: [
      {
        span: { ms },
        lasts,
        own: null,
        air: { end: at('24 14:00'), readings: [read], night: null, ...more },
      },
    ],
  });
const reason = (more: Partial<EdgeReason>): EdgeReason => ({ root, spans: [], at: 0, ...more });

const owned = (ms: number, own: number, lasts: number): EdgeReason =>
  reason({
    spans: inAir(ms, lasts).spans.map((each) => ({ ...each, own: { ms: own, coats: 5 } })),
  });

test.each([
  [
    owned(12 * hour, 17 * hour, 18.7 * hour),
    'label 12 h, yours 1.4 times from 5 coats, x 1.1 for 15 C 65 %, from A first stroke 13:10',
  ],
  [
    owned(2 * hour, 1.5 * hour, 1.5 * hour),
    'label 2 h, yours 0.8 times from 5 coats, sooner than the label, from A first stroke 13:10',
  ],
  [
    owned(2 * hour, 2.05 * hour, 2.05 * hour),
    'label 2 h, yours 1.02 times from 5 coats, from A first stroke 13:10',
  ],
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
  expect(edgeWords(told, now, shop)).toBe(words);
});

const from = ', from A first stroke 13:10';

test.each([
  [inAir(2 * hour, 3.8 * hour), 'label 2 h x 1.9 for 15 C 65 %'],
  [inAir(2 * hour, 2.04 * hour), 'label 2 h'],
  [inAir(2 * hour, hour), 'label 2 h x 0.5 for 15 C 65 %'],
  [
    inAir(2 * hour, 2.8 * hour, { readings: [read, read, { ...read, tempC: 18 }] }),
    'label 2 h x 1.4 over 3 readings',
  ],
  [inAir(2 * hour, 2 * hour, { readings: [] }), 'label 2 h, no reading'],
  [
    inAir(12 * hour, 20 * hour, {
      end: at('25 09:00'),
      readings: [{ ...read, at: at('24 05:20') }],
    }),
    'label 12 h x 1.7 for 15 C 65 %, reading 9 h old',
  ],
  [
    inAir(12 * hour, 20 * hour, {
      end: at('25 09:00'),
      readings: [{ ...read, at: at('24 05:20') }],
      night: { tempC: 12, from: at('24 09:20') },
    }),
    'label 12 h x 1.7 for 15 C 65 %, reading 9 h old, night low 12 C counted day and night till the next',
  ],
  [
    inAir(12 * hour, 20 * hour, {
      end: at('25 09:00'),
      night: { tempC: 12, from: at('24 17:40') },
    }),
    'label 12 h x 1.7 for 15 C 65 %, night low 12 C counted day and night from 17:40 till the next reading',
  ],
])('what the air did to a figure: %# %s', (told, words) => {
  expect(edgeWords(told, now, shop)).toBe(words + from);
});

test('a figure in the units of the shop', () => {
  const told = inAir(2 * hour, 3.8 * hour);
  expect(edgeWords(told, now, { ...shop, temperature: 'F' })).toBe(
    `label 2 h x 1.9 for 59 F 65 %${from}`,
  );
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
