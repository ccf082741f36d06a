import { describe, expect, it } from 'vitest';
import type { Bench, ImportedHours } from '../../../src/tracker/bench/index.ts';
import { expectedMinutes, hoursOfPiece } from '../../../src/tracker/estimate/index.ts';
import {
  estimatorFrom,
  foreseenMinutes,
  fromYou,
  nothingLearned,
  notTaught,
  notToTeach,
  teachBench,
  teachImports,
  type Taught,
} from '../../../src/tracker/learning/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step } from '../estimate/invented-shop.ts';

const schedule = scheduleOf([
  step('strip', { stepClass: 'strip', minutes: { typical: 60, low: 40, high: 100 } }),
  step('wax', { stepClass: 'wax', minutes: { typical: 60, low: 40, high: 100 } }),
]);

/** So many pieces, each stripped in 120 minutes and waxed in 57. */
function workedShop(pieces: number) {
  const shop = inventShop();
  const ids = Array.from({ length: pieces }, (_, i) => {
    const id = shop.add(`Piece ${i}`, schedule, monday);
    shop.work(id, i * 400, i * 400 + 120);
    shop.work(id, i * 400 + 200, i * 400 + 257);
    return id;
  });
  return { shop, ids, after: monday + pieces * 8 * hour };
}

const learnedOn = (bench: Bench) => teachBench(notTaught, bench).minutes;

describe('finished steps', () => {
  it('teach in the order in which they were finished, each against the schedule', () => {
    const { shop } = workedShop(3);
    const learned = learnedOn(shop.bench());
    expect(learned.steps).toBe(6);
    expect(learned.classes).toEqual(['strip', 'wax']);
    const estimator = estimatorFrom(() => learned);
    const [strip, wax] = schedule.steps.map((each) => estimator.expects(each, { areaM2: null }));
    expect(strip).toMatchObject({ chance: 0.8, model: fromYou });
    expect(strip?.minutes).toBeGreaterThan(80);
    expect(wax?.minutes).toBeLessThan(strip?.minutes ?? 0);
    expect(strip?.low).toBeLessThan(strip?.minutes ?? 0);
    expect(strip?.high).toBeGreaterThan(strip?.minutes ?? 0);
  });

  it('leave the schedule to speak before the first', () => {
    const estimator = estimatorFrom(() => notTaught.minutes);
    for (const each of schedule.steps)
      expect(estimator.expects(each, { areaM2: null })).toEqual(
        expectedMinutes(each, { areaM2: null }),
      );
    expect(estimator.total(schedule.steps, { areaM2: null })).toBeNull();
  });

  it('teach once, however often the bench is looked at, and in whatever portions', () => {
    const { shop } = workedShop(3);
    const half = teachBench(notTaught, shop.bench());
    expect(teachBench(half, shop.bench())).toBe(half);
    const { shop: longer } = workedShop(5);
    const grown = teachBench(half, longer.bench());
    expect(grown.minutes).toEqual(teachBench(notTaught, longer.bench()).minutes);
  });

  it('teach nothing when picked up and done within a minute', () => {
    const shop = inventShop();
    const id = shop.add('Told after it was done', schedule, monday);
    shop.work(id, 0, 0.5);
    shop.work(id, 10, 67);
    expect(learnedOn(shop.bench()).classes).toEqual(['wax']);
  });

  it('of a piece that was removed or left out teach nothing', () => {
    const { shop, ids, after } = workedShop(3);
    const taught = teachBench(notTaught, shop.bench());
    shop.act({ do: 'remove piece', piece: ids[0] ?? '' }, after);
    shop.act(
      { do: 'leave out of learning', piece: ids[1] ?? '', session: null, leave: true },
      after,
    );
    expect(learnedOn(shop.bench()).steps).toBe(2);
    expect(notToTeach(shop.bench(), Object.keys(taught.until))).toEqual(
      [ids[0], ids[1]].toSorted(),
    );
    shop.act({ do: 'take back' }, after);
    expect(learnedOn(shop.bench()).steps).toBe(4);
  });

  it('that were worked in a session that is left out, or not put down yet, teach nothing', () => {
    const { shop, ids, after } = workedShop(2);
    const session = shop.bench().sessions[0]?.id ?? '';
    const leave = { do: 'leave out of learning', piece: ids[0] ?? '', session } as const;
    shop.act({ ...leave, leave: true }, after);
    expect(learnedOn(shop.bench()).steps).toBe(3);
    expect(shop.tries({ ...leave, leave: true }, after)).toMatch(/^Not left out: .* already\.$/);
    shop.act({ ...leave, leave: false }, after);
    expect(learnedOn(shop.bench()).steps).toBe(4);
    const id = shop.add('Piece in hand', schedule, after);
    shop.act({ do: 'pick up', targets: [{ piece: id, part: null }] }, after);
    shop.act({ do: 'done', piece: id, part: null }, after + hour);
    expect(learnedOn(shop.bench()).steps).toBe(4);
    shop.act({ do: 'put down' }, after + hour);
    expect(learnedOn(shop.bench()).steps).toBe(5);
  });

  it('store what was expected then, and keep it when more is learned', () => {
    const { shop, after } = workedShop(2);
    const withEstimator = (): Bench => {
      const bench = shop.bench();
      return { ...bench, estimator: estimatorFrom(() => learnedOn(bench)) };
    };
    const id = shop.add('Next', schedule, after);
    const bench = withEstimator();
    const piece = bench.pieces.get(id);
    if (piece === undefined) throw new Error('not added');
    const hours = hoursOfPiece(bench, piece, after);
    expect(hours.toGo?.model).toBe(fromYou);
    const [strip, wax] = hours.steps.map(({ expected }) => expected);
    // Drawn jointly: wider than two lucks apart, narrower than both at their worst.
    expect(hours.toGo?.high).toBeLessThan((strip?.high ?? 0) + (wax?.high ?? 0));
    expect(hours.toGo?.low).toBeGreaterThan((strip?.low ?? 0) + (wax?.low ?? 0));
  });
});

describe('hours that were kept elsewhere', () => {
  /** Guesses on many pieces, and what they took: so many times the guess, half and double of it now and then. */
  let files = 0;
  const imported = (times: (stepClass: string) => number): ImportedHours => ({
    id: `import ${(files += 1)}`,
    file: 'old.csv',
    fingerprint: 'old',
    takenAt: monday,
    rows: Array.from({ length: 240 }, (_, i) => {
      const stepClass = (['strip', 'wax', 'scuff'] as const)[i % 3] ?? 'wax';
      const luck = [1, 0.8, 1.25, 1, 0.5, 2, 1.1, 0.9][i % 8] ?? 1;
      const estimate = 20 + (i % 7) * 10;
      return {
        at: monday - (240 - i) * 24 * hour,
        piece: `Piece ${i % 40}`,
        stepClass,
        estimate,
        minutes: estimate * times(stepClass) * luck,
      };
    }),
  });
  const expectedBy = (taught: Taught) =>
    schedule.steps.map((each) =>
      estimatorFrom(() => taught.minutes).expects(each, { areaM2: null }),
    );

  it.each([2, 1, 0.5])(
    'guessed so that all took %d times as long leave the schedules where they are',
    (times) => {
      const anybody = foreseenMinutes(nothingLearned(), 'strip', 60) ?? (() => Number.NaN);
      const before = expectedBy(notTaught);
      const after = expectedBy(teachImports(notTaught, [imported(() => times)]));
      for (const [i, { minutes, low, high, model }] of after.entries()) {
        expect(model).toBe(fromYou);
        expect(minutes / (before[i]?.minutes ?? 0)).toBeGreaterThan(0.9);
        expect(minutes / (before[i]?.minutes ?? 0)).toBeLessThan(1.1);
        // As wide as for anybody of whom nothing is known, or narrower.
        expect(high / low).toBeLessThan(anybody(0.9) / anybody(0.1));
      }
    },
  );

  it('do not move what own steps taught since, whatever the guesses were', () => {
    const { shop } = workedShop(8);
    const own = expectedBy(teachBench(notTaught, shop.bench()));
    const onGuesses = (times: number) =>
      expectedBy(teachBench(teachImports(notTaught, [imported(() => times)]), shop.bench()));
    expect(onGuesses(2)).toEqual(
      onGuesses(1).map(({ minutes, low, high, ...rest }) => ({
        ...rest,
        minutes: expect.closeTo(minutes, -1),
        low: expect.closeTo(low, -1),
        high: expect.closeTo(high, -1),
      })),
    );
    for (const [i, { low, high }] of onGuesses(2).entries())
      expect(high / low).toBeLessThan(1.5 * ((own[i]?.high ?? 0) / (own[i]?.low ?? 1)));
  });

  it('teach in the order of their days, in whatever order their rows and files stand', () => {
    const [one, other] = [imported(() => 1.5), imported(() => 0.7)];
    const turned = ({ rows, ...file }: ImportedHours) => ({ ...file, rows: rows.toReversed() });
    const shifted = { ...other, rows: other.rows.map((row) => ({ ...row, at: row.at - hour })) };
    const inOrder = teachImports(notTaught, [one, shifted]).minutes;
    expect(teachImports(notTaught, [turned(shifted), turned(one)]).minutes).toEqual(inOrder);
  });

  it('teach which work takes longer than other work', () => {
    const taught = teachImports(notTaught, [imported((each) => (each === 'strip' ? 3 : 1.5))]);
    const [strip, wax] = expectedBy(taught);
    // Twice as long against the guesses: half of that may be the guessing.
    expect((strip?.minutes ?? 0) / (wax?.minutes ?? 1)).toBeGreaterThan(1.25);
    expect((strip?.minutes ?? 0) / (wax?.minutes ?? 1)).toBeLessThan(Math.SQRT2);
    expect(wax?.minutes).toBeGreaterThan(45);
    expect(wax?.minutes).toBeLessThan(75);
  });
});
