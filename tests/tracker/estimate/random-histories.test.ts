import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hoursOfFinished, hoursOfPiece, leftRunning } from '../../../src/tracker/estimate/index.ts';
import {
  bySchedule,
  costliest,
  overTime,
  pieceOutcomes,
  whereHoursWent,
} from '../../../src/tracker/review/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { anyDeeds, benchAfter } from './any-history.ts';

/** Every number in a value, however deep; the facts of pieces, steps and sessions are left out. */
function figures(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (Array.isArray(value)) return value.flatMap(figures);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value)
    .filter(([name]) => !['piece', 'step', 'session', 'note'].includes(name))
    .flatMap(([, inner]) => figures(inner));
}

describe('hours of whatever happened', () => {
  it('are finite, never negative, and account for every minute once', () => {
    fc.assert(
      fc.property(anyDeeds, (deeds) => {
        const { bench, now } = benchAfter(deeds);
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
        const month = (at: number): string => new Date(at).toISOString().slice(0, 7);
        const reviews = [
          bySchedule(finished),
          overTime(finished, month),
          pieceOutcomes(finished),
          whereHoursWent(finished),
          costliest(finished),
        ];
        for (const figure of figures(reviews)) {
          expect(Number.isFinite(figure)).toBe(true);
          expect(figure).toBeGreaterThanOrEqual(0);
        }
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
