import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bench, Intent } from '../../../src/tracker/bench/index.ts';
import { hoursOfFinished, hoursOfPiece, leftRunning } from '../../../src/tracker/estimate/index.ts';
import { estimatorFrom, notTaught, teachBench } from '../../../src/tracker/learning/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step } from './invented-shop.ts';

const coat = step('coat', {
  stepClass: 'coat, brushed',
  driver: 'area',
  setupMinutes: 15,
  passes: 2,
  stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
});
const schedule = scheduleOf([
  step('look', { stepClass: 'look over' }),
  step('sand', { stepClass: 'scuff', setupMinutes: 8 }),
  coat,
  step('odd', { minutes: { typical: 0, low: 0, high: 0 } }),
]);

const piece = fc.integer({ min: 0, max: 3 });
const deed = fc.record({
  wait: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 400 })),
  piece,
  other: piece,
  what: fc.constantFrom(
    'pick up',
    'pick up both',
    'put down',
    'stamp',
    'done',
    'correct end',
    'drop',
    'move to other',
    'skip',
    'repeat',
    'size',
    'off',
    'back',
    'remove',
    'take back',
    'bring back',
    'parts',
  ),
});
type Deed = typeof deed extends fc.Arbitrary<infer Value> ? Value : never;

function intentOf(
  { what, piece: index, other }: Deed,
  ids: readonly string[],
  shop: ReturnType<typeof inventShop>,
): Intent {
  const id = ids[index] ?? '';
  const second = ids[other] ?? '';
  const bench = shop.bench();
  const session = bench.sessions.at(-1)?.id ?? '';
  switch (what) {
    case 'pick up':
      return { do: 'pick up', targets: [{ piece: id, part: null }] };
    case 'pick up both':
      return {
        do: 'pick up',
        targets: [
          { piece: id, part: null },
          { piece: second, part: null },
        ],
      };
    case 'put down':
      return { do: 'put down' };
    case 'stamp':
      return { do: 'next stamp', piece: id, part: null };
    case 'done':
      return { do: 'done', piece: id, part: shop.piece(id).parts[0]?.id ?? null };
    case 'correct end':
      return {
        do: 'correct session',
        session,
        end: bench.sessions.at(-1)?.start ?? 0,
      };
    case 'drop':
      return { do: 'correct session', session, dropped: true };
    case 'move to other':
      return {
        do: 'correct session',
        session,
        targets: [{ piece: second, part: null, step: 'sand' }],
      };
    case 'skip':
      return { do: 'skip step', piece: id, step: 'sand', skipped: true };
    case 'repeat':
      return { do: 'repeat step', piece: id, step: 'coat' };
    case 'size':
      return { do: 'describe piece', piece: id, changes: { areaM2: 0.05 + other } };
    case 'off':
      return { do: 'take off bench', piece: id };
    case 'back':
      return { do: 'put back on bench', piece: id };
    case 'remove':
      return { do: 'remove piece', piece: id };
    case 'take back':
      return { do: 'take back' };
    case 'bring back':
      return { do: 'bring back' };
    case 'parts':
      return { do: 'name parts', piece: id, names: ['case', 'doors'] };
  }
}

/** Every number in a value, however deep; the facts of pieces, steps and sessions are left out. */
function figures(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (Array.isArray(value)) return value.flatMap(figures);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value)
    .filter(([name]) => !['piece', 'step', 'session', 'note'].includes(name))
    .flatMap(([, inner]) => figures(inner));
}

/** The bench as the program holds it, with whatever it has taught. */
const withLearned = (bench: Bench): Bench => ({
  ...bench,
  estimator: estimatorFrom(() => teachBench(notTaught, bench).minutes),
});

describe('hours of whatever happened', () => {
  it('are finite, never negative, and account for every minute once', () => {
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 60 }), (deeds) => {
        const shop = inventShop();
        const ids = [0, 1, 2, 3].map((number) => shop.add(`Piece ${number}`, schedule, monday));
        let now = monday;
        for (const each of deeds) {
          now += each.wait * minute;
          shop.tries(intentOf(each, ids, shop), now);
          // A key that took back the adding of a piece is no history to count.
          if (ids.some((id) => !shop.bench().pieces.has(id))) shop.tries({ do: 'bring back' }, now);
        }
        const bench = withLearned(shop.bench());
        let recorded = 0;
        for (const each of bench.pieces.values()) {
          const hours = hoursOfPiece(bench, each, now);
          for (const figure of figures(hours)) {
            expect(Number.isFinite(figure)).toBe(true);
            expect(figure).toBeGreaterThanOrEqual(0);
          }
          const minutes = hours.steps.reduce((sum, one) => sum + (one.minutes ?? 0), 0);
          expect(minutes + hours.setup.minutes + hours.other).toBeCloseTo(hours.recorded, 6);
          recorded += hours.recorded;
          for (const session of bench.sessions) {
            const found = leftRunning(bench, each, session, now);
            const end = session.end ?? now;
            const trimTo = found?.trimTo ?? null;
            if (trimTo !== null) {
              expect(trimTo).toBeGreaterThan(session.start);
              expect(trimTo).toBeLessThan(end);
            }
          }
        }
        const lengths = bench.sessions
          .filter(({ dropped }) => !dropped)
          .map(({ start, end }) => ((end ?? now) - start) / minute);
        expect(recorded).toBeCloseTo(
          lengths.reduce((sum, length) => sum + length, 0),
          6,
        );
        const finished = hoursOfFinished([bench], now);
        expect(figures(finished).every(Number.isFinite)).toBe(true);
        for (const { ratio, range } of [finished.whole, ...finished.classes]) {
          if (range === null || ratio === null) continue;
          expect(range.low).toBeLessThanOrEqual(ratio);
          expect(range.high).toBeGreaterThanOrEqual(ratio);
        }
        expect(finished.held.held).toBeLessThanOrEqual(finished.held.of);
      }),
      { numRuns: 200 },
    );
  }, 60_000);
});
