import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findings, type Bench, type Finding } from '../../../src/tracker/bench/index.ts';
import {
  dryingBook,
  dryingOfProduct,
  dryingTimesFrom,
  withCoatsOf,
} from '../../../src/tracker/learning/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import type { Chemistry, Product, Reading } from '../../../src/tracker/trade/index.ts';
import {
  airSense,
  milestones,
  movableOpening,
  senseWithOwnTime,
  type Milestone,
  type WindowRule,
} from '../../../src/tracker/windows/index.ts';
import { labelSense } from '../support/sense.ts';
import { product, schedule, step } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';
import { morning } from '../support/instants.ts';
import { tried } from './law.ts';

const chemistries: readonly Chemistry[] = [
  'waterborne',
  'oxidative',
  'evaporative',
  'two-part',
  'moisture-cure',
  'glue',
  'reaction',
];

type Shape = {
  readonly chemistry: Chemistry;
  readonly milestone: Milestone;
  readonly minutes: number;
  readonly kind: 'coat' | 'glue' | 'cure';
  readonly learnable: boolean;
  readonly hasGap: boolean;
};

/** Everything that a file can say of a milestone, and more: also what no file of ours would call learnable. */
const shape: fc.Arbitrary<Shape> = fc.record({
  chemistry: fc.constantFrom(...chemistries, 'waterborne', 'evaporative', 'oxidative'),
  milestone: fc.oneof(
    fc.constantFrom<Milestone>('scuff', 'recoat'),
    fc.constantFrom(...milestones),
  ),
  minutes: fc.integer({ min: 1, max: 3000 }),
  kind: fc.constantFrom('coat', 'coat', 'coat', 'coat', 'glue', 'cure'),
  learnable: fc.constantFrom(true, true, false),
  hasGap: fc.constantFrom(false, false, true),
});

const lastStroke = { events: ['last-stroke'], which: 'last' } as const;

const ruleOf = ({ chemistry, milestone, minutes, kind, learnable, hasGap }: Shape): WindowRule => {
  const plus = { ms: minutes * minute, chemistry, statedFor: { tempC: 23, rh: 50 } } as const;
  const label = {
    kind: 'stamp',
    stamp: lastStroke,
    plus: { ...plus, may: 'grow', learnable },
  } as const;
  return {
    id: 'tried',
    kind,
    verb: milestone,
    milestone,
    scope: 'pass',
    begins: { events: ['first-stroke'], which: 'first', assume: true },
    stretches: [
      { meaning: 'wait', loss: 'costs nothing' },
      {
        from: {
          kind: 'latest',
          of: [
            { kind: 'earliest', of: [label, { kind: 'check', finding: 'ready' }] },
            { kind: 'check', finding: 'not yet', plus: { ms: 10 * minute } },
          ],
        },
        meaning: 'go',
        loss: 'costs nothing',
      },
      ...(hasGap
        ? [
            {
              from: { kind: 'stamp', stamp: lastStroke, plus: { ms: 9000 * minute } },
              meaning: 'keep off',
              loss: 'costs work',
            } as const,
          ]
        : []),
    ],
    closedBy: { by: 'needing step' },
    notYetAdds: 10 * minute,
  };
};

type Tries = readonly { readonly after: number; readonly finding: Finding }[];

/** In hundredths of the label's time: half of the shops are so quick that an opening may come sooner. */
const paces = fc.oneof(fc.integer({ min: 15, max: 50 }), fc.integer({ min: 15, max: 250 }));
/** Checks of several coats, in hundredths of the label's time after the last stroke. */
const coats: fc.Arbitrary<readonly Tries[]> = paces.chain((pace) =>
  fc.array(
    fc.array(
      fc.record({
        after: fc.integer({ min: Math.ceil(pace / 2), max: pace * 2 }),
        finding: fc.constantFrom<Finding>(...findings, 'ready', 'ready', 'ready', 'ready'),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    { minLength: 4, maxLength: 10, size: 'max' },
  ),
);

const readings: fc.Arbitrary<readonly Reading[]> = fc
  .array(
    fc.record({
      at: fc.integer({ min: -20, max: 60 }).map((hours) => morning + hours * hour),
      tempC: fc.integer({ min: -10, max: 40 }),
      rh: fc.integer({ min: 1, max: 100 }),
    }),
    { maxLength: 6 },
  )
  .map((all) => all.toSorted((one, other) => one.at - other.at));

const coat = step('coat', 'coat, brushed', {
  product: 'tried',
  stamps: [{ event: 'first-stroke', says: 'on' }],
});

/** A bench with a piece for each coat, tried as it is said. */
function benchOf(own: Product, minutes: number, all: readonly Tries[]): Bench {
  const shop = new Workday();
  const needs = own.windows.flatMap(({ milestone }) => milestone ?? []);
  const given = schedule('tried', [coat, step('next', 'other', { needs })], [own]);
  for (const [index, list] of all.entries()) {
    const id = shop.adds(`Piece ${index}`, given, morning);
    shop.does({ do: 'pick up', targets: [{ piece: id, part: null }] }, morning);
    shop.firstStroke(id, morning);
    shop.done(id, morning + minute);
    shop.tries({ do: 'put down', piece: id }, morning + minute);
    for (const { after, finding } of list.toSorted((a, b) => a.after - b.after))
      shop.tries(
        { do: 'check', piece: id, part: null, finding },
        morning + minute + Math.ceil((after * minutes) / 100) * minute,
      );
  }
  return shop.bench;
}

test('whatever was tried, an opening comes sooner than its label only where the trade allows it', () => {
  const seen = { sooner: 0, later: 0 };
  fc.assert(
    fc.property(shape, coats, readings, (given, list, read) => {
      const rule = ruleOf(given);
      const own = product('tried', given.chemistry, [rule]);
      const bench = benchOf(own, given.minutes, list);
      const air = airSense({ readings: read, nightLowC: null });
      const learn = () => dryingBook(withCoatsOf([], bench, air));
      const book = learn();
      const time = dryingTimesFrom(() => book, true).own(own, rule) ?? undefined;
      expect(dryingTimesFrom(learn, true).own(own, rule) ?? undefined).toEqual(time);
      for (const { label, yours } of dryingOfProduct(own, book, true))
        for (const minutes of [label, ...Object.values(yours ?? {})]) {
          expect(minutes).toBeGreaterThan(0);
          expect(minutes).toBeLessThan(Number.POSITIVE_INFINITY);
        }
      const plus = movableOpening(rule)?.span;
      if (time === undefined || plus === undefined) {
        expect(time).toBeUndefined();
        return;
      }
      const label = given.minutes * minute;
      expect(Number.isInteger(time.ms)).toBe(true);
      expect(given.kind).toBe('coat');
      expect(given.hasGap).toBe(false);
      const opens = senseWithOwnTime({ ...labelSense, ...air }, rule, time).spanEnd(plus, morning);
      // The air still only lengthens.
      expect(opens).toBeGreaterThanOrEqual(morning + time.ms);
      if (time.ms >= label) {
        seen.later += 1;
        return;
      }
      seen.sooner += 1;
      expect(['scuff', 'recoat']).toContain(given.milestone);
      expect(['waterborne', 'evaporative', 'oxidative']).toContain(given.chemistry);
      expect(given.learnable).toBe(true);
      expect(time.ms).toBeGreaterThanOrEqual(Math.floor(label / 2));
      const found = list.filter((tries) => tries.some(({ finding }) => finding === 'ready'));
      expect(found.length).toBeGreaterThanOrEqual(5);
    }),
    tried(200),
  );
  expect(seen.sooner).toBeGreaterThan(3);
  expect(seen.later).toBeGreaterThan(20);
});
