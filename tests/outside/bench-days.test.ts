import { describe, expect, test } from 'vitest';
import { readScheduleFolders } from '../../src/persist/schedules/index.ts';
import { benchDays } from '../../src/tracker/estimate/index.ts';
import { hour, type Milliseconds } from '../../src/tracker/time/index.ts';
import {
  nothingKnown,
  type FinishingSchedule,
  type KnownOfPiece,
  type Product,
  type Step,
} from '../../src/tracker/trade/index.ts';
import { step } from '../tracker/support/schedules.ts';
import { doneAt } from './shop-days.ts';
import { monday, Work } from './work.ts';

const templates = new URL('../../templates/', import.meta.url).pathname;
const { schedules, products } = await readScheduleFolders({ built: null, templates, own: null });

const answersAt = ({ steps }: FinishingSchedule, place: 0 | -1): KnownOfPiece['answers'] =>
  Object.fromEntries(
    steps.flatMap(({ id, asks }) => {
      const answer = asks?.answers.at(place);
      return answer === undefined ? [] : [[id, answer.id]];
    }),
  );

/** Minutes of the reference piece as the file has them: what an answer makes of them is left out on both sides. */
const foreseen = (schedule: FinishingSchedule, known: KnownOfPiece, open: Milliseconds) =>
  benchDays(schedule, known, { open, now: monday, minutesOf: ({ minutes }) => minutes.typical });

describe('a schedule foreseen takes as long as one that is worked through the door', () => {
  test.each(schedules.map((schedule) => [schedule.id, schedule] as const))('%s', (_, schedule) => {
    for (const [wood, yearMade, place, open] of [
      ['hard', 1990, 0, 10 * hour],
      ['soft', 1950, -1, 10 * hour],
      ['hard', 1950, -1, 3 * hour],
      ['soft', 1990, 0, 24 * hour],
    ] as const) {
      const answers = answersAt(schedule, place);
      const work = new Work(schedule, wood);
      work.act({ do: 'describe piece', piece: work.piece.id, changes: { yearMade } }, monday);
      const took = doneAt(work, answers, open) - monday;
      const { leastMs, mostMs } = foreseen(schedule, { wood, yearMade, answers }, open);
      expect([open / hour, place, leastMs / hour]).toEqual([open / hour, place, took / hour]);
      expect(mostMs).toBe(leastMs);
    }
  });
});

const productOf = (id: string): Product => {
  const product = products[id];
  if (product === undefined) throw new Error(`no ${id}`);
  return product;
};

/** Steps of the same product, worked one after the other by somebody who is there from 8:00 to 18:00. */
function inHours(
  id: string,
  ...steps: readonly (readonly [minutes: number, more: Partial<Step>])[]
) {
  const product = productOf(id);
  const { least, leastMs } = benchDays(
    {
      products: { [id]: product },
      steps: steps.map(([typical, more], index) =>
        step(String(index), 'other', {
          minutes: { typical, low: typical, high: typical },
          ...more,
        }),
      ),
    },
    nothingKnown,
    { open: 10 * hour, now: monday, minutesOf: ({ minutes }) => minutes.typical },
  );
  return { days: least, hours: leastMs / hour };
}

const stroke = { event: 'first-stroke', says: 'on' } as const;
const clamped = { event: 'in-clamps', says: 'in clamps' } as const;

/** Worked by hand; each hour stands for one after 8:00 on the first day. */
describe('worked by hand from published times', () => {
  const glued = (product: string) => [30, { product, stamps: [stroke, clamped] }] as const;
  const clampsOff = [12, { needs: ['clamps off'] }] as const;
  const twice = (product: string) =>
    inHours(product, glued(product), clampsOff, glued(product), clampsOff);

  test('two joints, one after the other: yellow glue within a morning, 30 min in clamps ("Glue characteristics" table)', () => {
    // Glued by 8:30 and 30 min in clamps by then; off by 8:42; glued by 9:12, off by 9:24.
    expect(twice('pva-yellow')).toEqual({ days: 1, hours: 1.4 });
  });

  test.each(['hide-liquid', 'urea-resin'])(
    'the same with %s: 12 h in clamps each end in the night, the third day ("Glue characteristics" table)',
    (product) => {
      // In clamps till 20:00, off on the second morning by 8:12; in clamps till 20:12, off on the third by 8:12.
      expect(twice(product)).toEqual({ days: 3, hours: 48.2 });
    },
  );

  test('the same with resorcinol glue: 10 h in clamps end as the shop shuts ("Glue characteristics" table)', () => {
    expect(twice('resorcinol')).toEqual({ days: 3, hours: 48.2 });
  });

  test('three coats of shellac on one day, hard the next: recoat after 2 h, full hardness after 24 h (US Army TM 43-0139, 2-23)', () => {
    const coat = { product: 'shellac', stamps: [stroke] };
    // On by 8:30; from 10:30, on by 11:00; from 13:00, on by 13:30; put to use on the second day from 13:30.
    expect(
      inHours(
        'shellac',
        [30, coat],
        [30, { ...coat, needs: ['recoat'] }],
        [30, { ...coat, needs: ['recoat'] }],
        [30, { needs: ['light use'] }],
      ),
    ).toEqual({ days: 2, hours: 30 });
  });

  test('bleach whose A dries for half an hour before B (USDA Forest Products Laboratory, report 1705)', () => {
    const stamps = ['A', 'B'].map((agent) => ({ ...stroke, agent }));
    expect(
      inHours('two-part-bleach-a-dries', [18, { product: 'two-part-bleach-a-dries', stamps }]),
    ).toEqual({
      days: 1,
      hours: 0.5,
    });
  });
});
