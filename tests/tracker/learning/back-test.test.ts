import { describe, expect, it } from 'vitest';
import { verdictOn } from '../../../src/tracker/estimate/index.ts';
import {
  backTest,
  estimatorFrom,
  judgedRow,
  nothingLearned,
  teach,
  type BackTest,
  type Lesson,
} from '../../../src/tracker/learning/index.ts';
import { createMisses } from '../../../src/tracker/learning/misses.ts';
import { step } from '../estimate/invented-shop.ts';
import { seededUniform } from '../../../scripts/measure/seeded-uniform.mjs';

const usual = step('wax', { stepClass: 'wax', minutes: { typical: 40, low: 30, high: 60 } });

/** Log-normal minutes around the schedule's 40, by the transform of Box and Muller (Ann. Math. Stat. 29 (1958) 610-611). */
function lessons(count: number, spread: number, lean = 1): readonly Lesson[] {
  const uniform = seededUniform(7);
  return Array.from({ length: count }, (_, index) => {
    const normal = Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
    return {
      piece: `p${index}`,
      at: index,
      stepClass: index % 3 === 0 ? 'wax' : 'scuff',
      scheduled: 40,
      minutes: Math.max(1, 40 * lean * Math.exp(spread * normal)),
    };
  });
}

function ended(running: Generator<BackTest, BackTest>): BackTest {
  for (;;) {
    const { done, value } = running.next();
    if (done === true) return value;
  }
}

describe('the back-test', () => {
  it('foretells each step as the screen would have done it then, from what was finished before it', () => {
    const past = lessons(40, 0.3);
    const { whole, classes, done, of } = ended(backTest(past, nothingLearned(), 7));
    let learned = nothingLearned();
    let held = 0;
    for (const [index, lesson] of past.entries()) {
      const asked = { ...usual, stepClass: lesson.stepClass as 'wax' | 'scuff' };
      const expected = estimatorFrom(() => learned).expects(asked, { areaM2: null });
      if (index > 0 && verdictOn(lesson.minutes, expected) === 'inside') held += 1;
      learned = teach(learned, [lesson]);
    }
    expect([done, of, whole?.steps, whole?.held]).toEqual([40, 40, 39, held]);
    expect(classes.map(({ stepClass, steps }) => [stepClass, steps])).toEqual([
      ['scuff', 26],
      ['wax', 13],
    ]);
  });

  it('says the same in whatever order the steps are given', () => {
    const past = lessons(60, 0.3);
    expect(ended(backTest(past.toReversed(), nothingLearned(), 1000))).toEqual(
      ended(backTest(past, nothingLearned(), 3)),
    );
  });

  it('finds that ranges hold about as often as they claim, on minutes whose spread is known', () => {
    const { whole, first } = ended(backTest(lessons(3000, 0.35), nothingLearned(), 500));
    if (whole === null || first === null) throw new Error('nothing was tried');
    expect(whole.held / whole.steps).toBeGreaterThan(0.77);
    expect(whole.held / whole.steps).toBeLessThan(0.84);
    expect(judgedRow(whole)).toBe('as claimed');
    expect(first.steps).toBe(30);
    // Half of a normal distribution lies within 0.6745 spreads of its middle (any table of it).
    expect(Math.log(whole.missed)).toBeCloseTo(0.6745 * 0.35, 1);
  });

  it('shows by how much less is missed than by the schedule where somebody leans', () => {
    const { whole } = ended(backTest(lessons(500, 0.1, 2), nothingLearned(), 500));
    expect(whole?.missed).toBeLessThan(1.15);
    expect(whole?.scheduleMissed).toBeGreaterThan(1.8);
  });

  it('tells what it came to so far, and goes on from there', () => {
    const running = backTest(lessons(25, 0.3), nothingLearned(), 10);
    const told = [running.next(), running.next(), running.next()];
    expect(told.map(({ value, done }) => [value.done, value.whole?.steps, done])).toEqual([
      [10, 9, false],
      [20, 19, false],
      [25, 24, true],
    ]);
  });

  it('says nothing of no step, or of one', () => {
    for (const count of [0, 1]) {
      const { whole, classes, of } = ended(backTest(lessons(count, 0.3), nothingLearned(), 10));
      expect([whole, classes, of]).toEqual([null, [], count]);
    }
  });

  it('sets the first thirty apart only where there are more', () => {
    // The very first only teaches.
    const firstOf = (count: number) =>
      ended(backTest(lessons(count, 0.3), nothingLearned(), 100)).first;
    expect(firstOf(31)).toBeNull();
    expect(firstOf(32)?.steps).toBe(30);
  });

  it('counts hours from elsewhere as known before', () => {
    const [one] = lessons(1, 0.3);
    if (one === undefined) throw new Error('no lesson');
    const from = teach(nothingLearned(), [one, one]);
    expect(ended(backTest([one], from, 10)).whole?.steps).toBe(1);
  });
});

describe('how a row is judged', () => {
  const row = (held: number, steps: number) => ({
    held,
    steps,
    claimed: 0.8,
    missed: 1,
    scheduleMissed: 1,
  });

  it('allows for luck where there are few, and never for much', () => {
    expect(judgedRow(row(5, 19))).toBeNull();
    // 1.96 sd of 20 draws at 0.8 is 0.175.
    expect(judgedRow(row(13, 20))).toBe('as claimed');
    expect(judgedRow(row(12, 20))).toBe('too narrow');
    expect(judgedRow(row(7700, 10000))).toBe('as claimed');
    expect(judgedRow(row(7500, 10000))).toBe('too narrow');
    expect(judgedRow(row(8500, 10000))).toBe('too wide');
  });
});

describe('misses', () => {
  it('find the middle one to a hundredth, whatever their direction', () => {
    const misses = createMisses();
    for (const ratio of [1, 1.1, 1 / 1.3, 1.5, 1 / 90]) misses.add(ratio);
    expect(misses.middle()).toBeCloseTo(1.3, 1);
    expect(createMisses().middle()).toBe(1);
    // Of two, half missed by no more than the smaller.
    const two = createMisses();
    for (const ratio of [1.1, 2]) two.add(ratio);
    expect(two.middle()).toBeCloseTo(1.1, 1);
  });
});
