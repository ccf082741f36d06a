import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bench, Estimator } from '../../../src/tracker/bench/index.ts';
import {
  estimatorFrom,
  notTaught,
  teachBench,
  whatIf,
  type MinutesIntent,
} from '../../../src/tracker/learning/index.ts';
import { day, minute } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step } from '../estimate/invented-shop.ts';

const learnedFrom = (bench: Bench): Estimator => ({
  ...estimatorFrom(() => teachBench(notTaught, bench).minutes),
  afterwards: learnedFrom,
});
const withLearned = (bench: Bench): Bench => ({ ...bench, estimator: learnedFrom(bench) });

const schedule = scheduleOf([
  step('strip', { stepClass: 'strip', minutes: { typical: 60, low: 40, high: 90 } }),
  step('coat', { stepClass: 'coat, brushed' }),
]);

/** Pieces that were stripped, one a day; the session of each, by its place. */
function stripped(minutes: readonly number[]) {
  const shop = inventShop();
  const pieces = minutes.map((took, index) => {
    const at = monday + index * day;
    const id = shop.add(`Piece ${index}`, schedule, at);
    shop.act({ do: 'pick up', targets: [{ piece: id, part: null }] }, at);
    shop.act({ do: 'done', piece: id, part: null }, at + took * minute);
    shop.act({ do: 'put down' }, at + took * minute);
    return id;
  });
  return { shop, pieces, now: monday + minutes.length * day };
}

describe('what a change would make of expected minutes', () => {
  it('is what it does make of them, once it is made', () => {
    const change = fc.constantFrom('drop', 'end', 'leave session', 'leave piece', 'other step');
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 5, max: 300 }), { minLength: 1, maxLength: 6 }),
        fc.nat(),
        change,
        (minutes, at, what) => {
          const { shop, pieces, now } = stripped(minutes);
          const bench = withLearned(shop.bench());
          const session = bench.sessions[at % minutes.length];
          const piece = pieces[at % minutes.length] ?? '';
          if (session === undefined) return;
          const own = { do: 'correct session', session: session.id } as const;
          const intent: MinutesIntent =
            what === 'drop'
              ? { ...own, dropped: true }
              : what === 'end'
                ? { ...own, end: session.start + 4 * minute }
                : what === 'other step'
                  ? { ...own, targets: [{ piece, part: null, step: 'coat' }] }
                  : {
                      do: 'leave out of learning',
                      piece,
                      session: what === 'leave piece' ? null : session.id,
                      leave: true,
                    };
          const foretold = whatIf(bench, intent);
          shop.act(intent, now);
          const after = withLearned(shop.bench());
          const found = after.pieces.get(piece);
          for (const { stepClass, after: told } of foretold ?? []) {
            const its = found?.steps.find((each) => each.stepClass === stepClass);
            if (found === undefined || its === undefined) throw new Error(`no ${stepClass}`);
            const expected = after.estimator?.expects(its, found).minutes ?? Number.NaN;
            expect(told).toBeCloseTo(expected / its.minutes.typical, 9);
          }
          expect(foretold?.some(({ stepClass }) => stepClass === 'strip')).toBe(true);
          const moved = (foretold ?? []).map(({ before, after }) =>
            Math.abs(Math.log(after / before)),
          );
          expect(moved).toEqual(moved.toSorted((a, b) => b - a));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('says nothing where nobody foretells', () => {
    const { shop, pieces } = stripped([60]);
    expect(
      whatIf(shop.bench(), {
        do: 'leave out of learning',
        piece: pieces[0] ?? '',
        session: null,
        leave: true,
      }),
    ).toBeNull();
  });
});
