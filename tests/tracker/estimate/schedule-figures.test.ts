import { describe, expect, test } from 'vitest';
import { readScheduleFolders } from '../../../src/persist/schedules/index.ts';
import {
  expectedMinutes,
  rangeOfSum,
  scheduleFigures,
  type ScheduleFigures,
} from '../../../src/tracker/estimate/index.ts';
import {
  holds,
  nothingKnown,
  type FinishingSchedule,
  type KnownOfPiece,
  type Step,
} from '../../../src/tracker/trade/index.ts';
import { monday, Work } from '../../outside/work.ts';
import { dependsOnPiece, schedule, step } from '../support/schedules.ts';

const minutes = (typical: number) => ({ typical, low: typical, high: typical });

describe('what a schedule comes to', () => {
  const made = schedule('made', [
    step('look', 'look over', {
      minutes: minutes(10),
      asks: {
        question: 'what is it?',
        answers: [
          { id: 'soft', says: 'soft' },
          { id: 'thick', says: 'thick' },
        ],
      },
    }),
    step('rinse', 'clean', { minutes: minutes(20), onlyIf: { answers: { look: ['soft'] } } }),
    step('strip', 'strip', {
      minutes: minutes(100),
      minutesTimes: { look: { thick: 2 } },
      onlyIf: { answers: { look: ['thick', 'unknown'] } },
    }),
    step('wash', 'clean', { minutes: minutes(5), onlyIf: { answers: { look: ['thick'] } } }),
    step('seal', 'prime', { minutes: minutes(40), onlyIf: { wood: ['soft'] } }),
  ]);

  test('counts only what can be in together', () => {
    expect(scheduleFigures(made)).toEqual({
      leastSteps: 2,
      mostSteps: 4,
      lowMinutes: 10 + 20,
      highMinutes: expect.closeTo(10 + 200 + 5 + 40, 6),
    });
  });

  test('comes to less where more is known of the piece', () => {
    const hard: KnownOfPiece = { ...nothingKnown, wood: 'hard' };
    expect(scheduleFigures(made, hard)).toMatchObject({ leastSteps: 2, mostSteps: 3 });
    const thick: KnownOfPiece = { ...hard, answers: { look: 'thick' } };
    expect(scheduleFigures(made, thick)).toEqual({
      leastSteps: 3,
      mostSteps: 3,
      lowMinutes: expect.closeTo(215, 6),
      highMinutes: expect.closeTo(215, 6),
    });
  });

  test('is nothing without steps', () => {
    const none = { leastSteps: 0, mostSteps: 0, lowMinutes: 0, highMinutes: 0 };
    expect(scheduleFigures(schedule('empty', []))).toEqual(none);
  });
});

const templates = new URL('../../../templates/', import.meta.url).pathname;
const library = await readScheduleFolders({ built: null, templates, own: null });
const shipped = [...library.schedules, dependsOnPiece].map((each) => [each.id, each] as const);
const asking = (steps: readonly Step[]) =>
  steps.flatMap(({ id, asks }) => (asks === undefined ? [] : [{ id, answers: asks.answers }]));

describe.each(shipped)('%s', (_, each) => {
  test('comes to as much as trying every wood, year and answer one by one', () => {
    const tried = everything(each).map((known) =>
      figuresOf(
        each.steps.filter(({ onlyIf }) => holds(onlyIf, known)),
        known,
      ),
    );
    const figures = scheduleFigures(each);
    expect(figures.leastSteps).toBe(Math.min(...tried.map(({ leastSteps }) => leastSteps)));
    expect(figures.mostSteps).toBe(Math.max(...tried.map(({ mostSteps }) => mostSteps)));
    expect(figures.lowMinutes).toBeCloseTo(Math.min(...tried.map((one) => one.lowMinutes)), 6);
    expect(figures.highMinutes).toBeCloseTo(Math.max(...tried.map((one) => one.highMinutes)), 6);
    expect(figures.leastSteps).toBeLessThan(figures.mostSteps);
    expect(figures.mostSteps).toBeLessThan(each.steps.length);
  });

  test('holds every piece on a bench, at every stage of what is told of it', () => {
    const figures = scheduleFigures(each);
    for (const wood of [null, 'soft', 'hard'] as const)
      for (const yearMade of [null, 1950, 1990])
        for (const which of [0, 1, -1]) {
          const work = new Work(each, wood);
          const { id } = work.piece;
          if (yearMade !== null)
            work.act({ do: 'describe piece', piece: id, changes: { yearMade } }, monday);
          liesWithin(figures, work);
          for (const question of asking(each.steps)) {
            const own = work.piece.steps.find((one) => one.id === question.id);
            const answer = question.answers.at(which)?.id;
            if (own?.leftOut === true || answer === undefined) continue;
            work.act({ do: 'answer', piece: id, step: question.id, answer }, monday);
            liesWithin(figures, work);
            const { yearMade: year, wood: known } = work.piece;
            const answers = Object.fromEntries(
              Object.entries(work.piece.answers).map(([asked, given]) => [asked, given.answer]),
            );
            liesWithin(scheduleFigures(each, { yearMade: year, wood: known, answers }), work);
          }
        }
  });
});

/** Every combination of all there is to know, of answers too that nobody would be asked for. */
function everything({ steps }: FinishingSchedule): readonly KnownOfPiece[] {
  let all: readonly KnownOfPiece[] = [null, 1977, 1978].flatMap((yearMade) =>
    ([null, 'soft', 'hard'] as const).map((wood) => ({ yearMade, wood, answers: {} })),
  );
  for (const { id, answers } of asking(steps))
    all = all.flatMap((known) => [
      known,
      ...answers.map((answer) => ({ ...known, answers: { ...known.answers, [id]: answer.id } })),
    ]);
  return all;
}

function figuresOf(steps: readonly Step[], { answers }: Pick<KnownOfPiece, 'answers'>) {
  const given = Object.fromEntries(
    Object.entries(answers).map(([asked, answer]) => [asked, { answer }]),
  );
  const sum = rangeOfSum(
    steps.map((each) => expectedMinutes(each, { areaM2: null, answers: given })),
  );
  if (sum === null) throw new Error('no steps');
  return {
    leastSteps: steps.length,
    mostSteps: steps.length,
    lowMinutes: sum.low,
    highMinutes: sum.high,
  };
}

function liesWithin(figures: ScheduleFigures, { piece }: Work): void {
  const kept = piece.steps.filter(({ skipped }) => !skipped);
  const sum = rangeOfSum(kept.map((each) => expectedMinutes(each, piece)));
  expect(kept.length).toBeGreaterThanOrEqual(figures.leastSteps);
  expect(kept.length).toBeLessThanOrEqual(figures.mostSteps);
  expect(sum?.low).toBeGreaterThanOrEqual(figures.lowMinutes - 1e-6);
  expect(sum?.high).toBeLessThanOrEqual(figures.highMinutes + 1e-6);
}
