import { describe, expect, test } from 'vitest';
import { branchesOf, nothingKnown, type Step } from '../../../src/tracker/trade/index.ts';
import { allSchedules, dependsOnPiece, step } from '../support/schedules.ts';

const ids = (steps: readonly Step[]): string => steps.map(({ id }) => id).join(', ');
const ways = (...given: Parameters<typeof branchesOf>): readonly string[] => [
  ...new Set(branchesOf(...given).map(({ steps }) => ids(steps))),
];

/** A question whose answers pick one of two steps, or neither; a step of that branch asks again. */
const asking = [
  step('year', 'lead test', {
    onlyIf: { madeBefore: 1978 },
    asks: {
      question: 'lead?',
      answers: [
        { id: 'none', says: 'none' },
        { id: 'lead', says: 'lead' },
      ],
    },
  }),
  step('wet', 'sand bare, first grit', {
    onlyIf: { madeBefore: 1978, answers: { year: ['lead', 'unknown'] } },
  }),
  step('dry', 'sand bare, first grit', {
    onlyIf: { any: [{ madeSince: 1978 }, { answers: { year: ['none'] } }] },
  }),
];

describe('the ways through a schedule', () => {
  test('without a condition: there is one', () => {
    const plain = [step('one', 'clean'), step('two', 'wax')];
    expect(branchesOf(plain)).toEqual([{ known: nothingKnown, steps: plain }]);
  });

  test('never hold steps that exclude each other', () => {
    expect(ways(asking)).toEqual(['year, wet', 'year, dry', 'dry']);
  });

  test('are fewer for what is known of the piece', () => {
    expect(ways(asking, { ...nothingKnown, yearMade: 1985 })).toEqual(['dry']);
    expect(ways(asking, { ...nothingKnown, yearMade: 1977 })).toEqual(['year, wet', 'year, dry']);
    expect(ways(asking, { ...nothingKnown, answers: { year: 'lead' } })).toEqual([
      'year, wet',
      'dry',
    ]);
    const soft = { ...nothingKnown, yearMade: 1985, wood: 'soft' } as const;
    expect(ways(dependsOnPiece.steps, soft)).toEqual([
      'old finish, strip, prime, sample, coat, wrap',
      'old finish, wash off, prime, sample, coat, wrap',
    ]);
  });

  test('ask no question of a step that is left out', () => {
    for (const { known, steps } of branchesOf(asking))
      expect(steps.map(({ id }) => id)).toEqual(expect.arrayContaining(Object.keys(known.answers)));
    expect(branchesOf(asking, { ...nothingKnown, yearMade: 1985 })).toHaveLength(1);
  });

  test('try answers that come to the same once, and those that change only the minutes too', () => {
    const answers = ['a', 'b', 'c', 'd'].map((id) => ({ id, says: id }));
    const steps = [
      step('which', 'other', { asks: { question: 'which?', answers } }),
      step('then', 'strip', { minutesTimes: { which: { c: 2, d: 2 } } }),
    ];
    expect(branchesOf(steps).map(({ known }) => known.answers)).toEqual([{}, { which: 'c' }]);
  });

  test.each(allSchedules.map((each) => [each.id, each] as const))(
    'of %s begin with that of a piece of which nothing is ever told, and keep their order',
    (_, { steps }) => {
      const [plain] = branchesOf(steps);
      expect(plain?.known).toEqual(nothingKnown);
      for (const branch of branchesOf(steps))
        expect(branch.steps).toEqual(steps.filter((each) => branch.steps.includes(each)));
    },
  );

  test('of very many questions are not tried without end', () => {
    const many = Array.from({ length: 30 }, (_, index) => [
      step(`ask ${index}`, 'other', {
        asks: { question: 'so?', answers: [{ id: 'yes', says: 'yes' }] },
      }),
      step(`then ${index}`, 'other', { onlyIf: { answers: { [`ask ${index}`]: ['yes'] } } }),
    ]).flat();
    const branches = branchesOf(many);
    expect(branches.length).toBeGreaterThan(1000);
    expect(branches.length).toBeLessThanOrEqual(2000);
  });
});
