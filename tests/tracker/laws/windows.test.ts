import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  nextPingAt,
  pingsOfBench,
  sendingsDue,
  windowsOfPiece,
} from '../../../src/tracker/bench/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import {
  stampEvents,
  workOutWindow,
  type Edge,
  type Happenings,
  type Loss,
  type Meaning,
  type StampChoice,
  type WindowRule,
} from '../../../src/tracker/windows/index.ts';
import { morning } from '../support/instants.ts';
import { airThatSlows, labelSense } from '../support/sense.ts';
import { breaches } from './breaches.ts';
import { tried } from './law.ts';
import { pressAll, presses, pressThrough } from './presses.ts';

test('every window of a bench is in one state at every instant, and its states come in a legal order', () => {
  let begun = 0;
  fc.assert(
    fc.property(
      presses,
      fc.constantFrom(1, 2),
      fc.constantFrom(1, 1.5, 4),
      (list, hands, factor) => {
        const sense = airThatSlows(factor);
        for (const { after: bench, outcome } of pressAll(list, hands)) {
          const piece =
            outcome.ok && outcome.piece !== null ? bench.pieces.get(outcome.piece) : undefined;
          if (piece === undefined) continue;
          const windows = windowsOfPiece(piece, bench.sessions, sense);
          begun += windows.length;
          expect(windows.flatMap(breaches)).toEqual([]);
        }
      },
    ),
    tried(80),
  );
  // The law is not kept by there being no windows.
  expect(begun).toBeGreaterThan(500);
});

const ms = fc.integer({ min: 0, max: 4 * hour });
const choice: fc.Arbitrary<StampChoice> = fc.record(
  {
    events: fc.uniqueArray(fc.constantFrom(...stampEvents.slice(0, 4)), {
      minLength: 1,
      maxLength: 2,
    }),
    which: fc.constantFrom('first', 'last'),
    agent: fc.constantFrom('A', 'B'),
    assume: fc.boolean(),
  },
  { requiredKeys: ['events', 'which'] },
);
const span = fc.record({ ms, may: fc.constantFrom('grow', 'shrink') }, { requiredKeys: ['ms'] });
const { edge } = fc.letrec<{ edge: Edge; leaf: Edge }>((tie) => ({
  leaf: fc.oneof(
    fc.record(
      { kind: fc.constant('stamp'), stamp: choice, plus: span },
      { requiredKeys: ['kind', 'stamp'] },
    ),
    fc.record(
      { kind: fc.constant('check'), finding: fc.constantFrom('ready', 'not yet'), plus: span },
      { requiredKeys: ['kind', 'finding'] },
    ),
    fc.record({
      kind: fc.constant('clock'),
      after: choice,
      time: fc.constantFrom('07:30', '12:00', '00:00'),
    }),
  ),
  edge: fc.oneof(
    { maxDepth: 2, depthIdentifier: 'edge' },
    tie('leaf'),
    fc.record({ kind: fc.constant('beyond'), edge: tie('edge'), plus: span }),
    fc.record({
      kind: fc.constantFrom('earliest', 'latest'),
      of: fc.array(tie('edge'), { maxLength: 3, depthIdentifier: 'edge' }),
    }),
  ),
}));

/** Meanings in the orders that a window can have. */
const orders: readonly (readonly Meaning[])[] = [
  ['wait', 'go'],
  ['wait', 'go', 'late'],
  ['go', 'late'],
  ['wait', 'go', 'go after work'],
  ['wait', 'go', 'go after work', 'late'],
  ['wait', 'go', 'keep off', 'go'],
  ['wait', 'keep off', 'go', 'late'],
];
const loss = fc.constantFrom<Loss>('spoils', 'costs work', 'costs nothing');
const rule: fc.Arbitrary<WindowRule> = fc
  .record({
    order: fc.constantFrom(...orders),
    edges: fc.array(edge, { minLength: 3, maxLength: 3 }),
    losses: fc.array(loss, { minLength: 3, maxLength: 3 }),
    begins: choice,
    kind: fc.constantFrom('chemical', 'coat', 'glue', 'cure', 'pot'),
    closedBy: fc.constantFrom('ready', 'nothing'),
  })
  .map(({ order, edges, losses, begins, kind, closedBy }) => ({
    id: 'any',
    kind,
    verb: 'try it',
    scope: 'step',
    begins,
    stretches: order.map((meaning, index) => ({
      meaning,
      loss: meaning === 'wait' || meaning === 'go' ? 'costs nothing' : losses[index - 1]!,
      ...(index === 0 ? {} : { from: edges[index - 1]! }),
    })),
    closedBy: { by: closedBy },
  }));
const instant = fc.integer({ min: 0, max: 12 * hour }).map((offset) => morning + offset);
const happenings: fc.Arbitrary<Happenings> = fc.record({
  stamps: fc.array(
    fc.record({
      event: fc.constantFrom(...stampEvents.slice(0, 4)),
      agent: fc.constantFrom(null, 'A', 'B'),
      at: instant,
      fact: fc.uuid(),
    }),
    { maxLength: 6 },
  ),
  checks: fc.array(
    fc.record({
      finding: fc.constantFrom('ready', 'not yet', 'trouble'),
      at: instant,
      fact: fc.uuid(),
    }),
    { maxLength: 3 },
  ),
  assumedStart: fc.option(fc.record({ at: instant, fact: fc.uuid() })),
});
const subject = { pieceId: 'p', stepId: 's', partId: null, pass: 1, section: null };

test('so is every window that can be written at all, whatever happened', () => {
  let begun = 0;
  fc.assert(
    fc.property(rule, happenings, fc.constantFrom(1, 3), (any, happened, factor) => {
      const window = workOutWindow(
        { key: 'key', rule: any, subject },
        happened,
        airThatSlows(factor),
      );
      if (window === null) return;
      begun += 1;
      expect(breaches(window)).toEqual([]);
    }),
    tried(1500),
  );
  expect(begun).toBeGreaterThan(300);
});

test('what was claimed is never due again, and everything due is claimed in one look', () => {
  fc.assert(
    fc.property(
      presses,
      fc.constantFrom(1, 2),
      fc.array(fc.integer({ min: 0, max: 20 * hour }), { minLength: 1, maxLength: 5 }),
      (list, hands, looks) => {
        const { after: bench, now } = pressThrough(list, hands);
        const claimed = new Set<string>();
        let clock = now;
        for (const wait of [0, ...looks]) {
          clock += wait;
          for (const { settles, pings, loud, lateBy } of sendingsDue(
            bench,
            claimed,
            clock,
            labelSense,
          )) {
            expect(settles.length).toBeGreaterThanOrEqual(1);
            for (const key of settles) {
              expect(claimed).not.toContain(key);
              claimed.add(key);
            }
            expect(loud).toBe(pings.some((ping) => ping.loud));
            expect(lateBy).toBeGreaterThanOrEqual(0);
            // Nothing loud is told early.
            for (const ping of pings) if (ping.loud) expect(ping.at).toBeLessThanOrEqual(clock);
          }
          expect(sendingsDue(bench, claimed, clock, labelSense)).toEqual([]);
          const next = nextPingAt(bench, claimed, clock, labelSense);
          if (next !== null) expect(next).toBeGreaterThan(clock);
        }
        for (const ping of pingsOfBench(bench, clock, labelSense)) {
          if (ping.at <= clock) expect(claimed).toContain(ping.key);
        }
      },
    ),
    tried(80),
  );
});
