import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import {
  explainEdge,
  placeEdge,
  type Edge,
  type Happenings,
} from '../../../src/tracker/windows/index.ts';
import { airThatSlows, labelSense } from '../support/sense.ts';

const last = { events: ['last-stroke'], which: 'last' } as const;
const first = { events: ['first-stroke'], which: 'first', assume: true } as const;

const nothing: Happenings = { stamps: [], checks: [], assumedStart: null };
const coat: Happenings = {
  stamps: [
    { event: 'first-stroke', agent: null, at: 0, fact: 'a' },
    { event: 'last-stroke', agent: null, at: 20 * minute, fact: 'b' },
  ],
  checks: [],
  assumedStart: null,
};

const label: Edge = { kind: 'stamp', stamp: last, plus: { ms: 2 * hour, may: 'grow' } };

test('a figure of the label counts from its stamp', () => {
  expect(explainEdge(label, coat, labelSense)).toEqual({
    root: { by: 'stamp', choice: last, at: 20 * minute, assumed: false },
    spans: [{ span: { ms: 2 * hour, may: 'grow' }, lasts: 2 * hour, own: null, air: null }],
    at: 20 * minute + 2 * hour,
  });
});

test('in slow air it is told as it came out', () => {
  const reason = explainEdge(label, coat, airThatSlows(1.9));
  expect(reason?.spans[0]?.lasts).toBeCloseTo(3.8 * hour, 0);
});

test('of the label and a finding the one that decided is told', () => {
  const tried: Edge = {
    kind: 'latest',
    of: [
      { kind: 'earliest', of: [label, { kind: 'check', finding: 'ready' }] },
      { kind: 'check', finding: 'not yet', plus: { ms: 30 * minute } },
    ],
  };
  expect(explainEdge(tried, coat, labelSense)?.root.by).toBe('stamp');
  const ready = { ...coat, checks: [{ finding: 'ready', at: hour, fact: 'c' } as const] };
  expect(explainEdge(tried, ready, labelSense)?.root).toEqual({
    by: 'check',
    finding: 'ready',
    at: hour,
  });
  const notYet = { ...coat, checks: [{ finding: 'not yet', at: 3 * hour, fact: 'c' } as const] };
  expect(explainEdge(tried, notYet, labelSense)).toMatchObject({
    root: { by: 'check', finding: 'not yet', at: 3 * hour },
    at: 3 * hour + 30 * minute,
  });
});

test('a stamp that was never made is told as assumed, and without it nothing is known', () => {
  const edge: Edge = { kind: 'stamp', stamp: first, plus: { ms: hour } };
  expect(explainEdge(edge, nothing, labelSense)).toBeNull();
  const assumed = { ...nothing, assumedStart: { at: 5 * minute, fact: 'p' } };
  expect(explainEdge(edge, assumed, labelSense)?.root).toMatchObject({ assumed: true });
});

const edges: fc.Arbitrary<Edge> = fc.letrec<{ edge: Edge }>((tie) => ({
  edge: fc.oneof(
    { maxDepth: 3 },
    fc.record({
      kind: fc.constant('stamp' as const),
      stamp: fc.constantFrom(first, last),
      plus: fc.record({ ms: fc.integer({ min: 0, max: 1e8 }) }),
    }),
    fc.record({
      kind: fc.constant('check' as const),
      finding: fc.constantFrom('ready' as const, 'not yet' as const),
      plus: fc.record({ ms: fc.integer({ min: 0, max: 1e8 }) }),
    }),
    fc.record({
      kind: fc.constant('clock' as const),
      after: fc.constantFrom(first, last),
      time: fc.constant('07:30'),
    }),
    fc.record({
      kind: fc.constant('beyond' as const),
      edge: tie('edge'),
      plus: fc.record({ ms: fc.integer({ min: 0, max: 1e8 }) }),
    }),
    fc.record({
      kind: fc.constantFrom('earliest' as const, 'latest' as const),
      of: fc.array(tie('edge'), { minLength: 1, maxLength: 3 }),
    }),
  ),
})).edge;

const happenings: fc.Arbitrary<Happenings> = fc.record({
  stamps: fc.array(
    fc.record({
      event: fc.constantFrom('first-stroke', 'last-stroke'),
      agent: fc.constant(null),
      at: fc.integer({ min: 0, max: 1e9 }),
      fact: fc.string(),
    }),
  ),
  checks: fc.array(
    fc.record({
      finding: fc.constantFrom('ready' as const, 'not yet' as const, 'trouble' as const),
      at: fc.integer({ min: 0, max: 1e9 }),
      fact: fc.string(),
    }),
  ),
  assumedStart: fc.option(fc.record({ at: fc.integer({ min: 0, max: 1e9 }), fact: fc.string() })),
});

test('what is told always ends where the edge was placed, and is told whenever it is known', () => {
  fc.assert(
    fc.property(edges, happenings, fc.constantFrom(1, 1.9), (edge, happened, factor) => {
      const sense = airThatSlows(factor);
      const placed = placeEdge(edge, happened, sense);
      const reason = explainEdge(edge, happened, sense);
      if (!placed.known) {
        expect(reason).toBeNull();
        return;
      }
      expect(reason?.at).toBe(placed.at);
      const spent = reason?.spans.reduce((sum, { lasts }) => sum + lasts, 0) ?? 0;
      expect((reason?.root.at ?? 0) + spent).toBeCloseTo(placed.at, 3);
    }),
  );
});
