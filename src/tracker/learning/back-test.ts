import type { Expectation } from '../bench/facts.ts';
import { verdictOn } from '../estimate/hours.ts';
import { rangeOf } from './estimator.ts';
import type { LearnedMinutes } from './learned-minutes.ts';
import { foreseenMinutes } from './minutes-range.ts';
import { createMisses, type Misses } from './misses.ts';
import { teach } from './teach.ts';
import type { Lesson } from './taught-steps.ts';

/** How steps came out against ranges that knew only what was finished before them. */
export type BackTestRow = {
  readonly steps: number;
  /** How many came out within their range, and the chance that the ranges claimed, 0..1. */
  readonly held: number;
  readonly claimed: number;
  /** Half of the steps missed by no more than so many times, upwards or downwards: 1.2 is a fifth too long or too short. */
  readonly missed: number;
  /** The same had the finishing schedules' minutes been taken. */
  readonly scheduleMissed: number;
};

export type BackTest = {
  /** Steps that were tried, and how many there are to try. */
  readonly done: number;
  readonly of: number;
  readonly whole: BackTestRow | null;
  /** The first ones, of which little was known before. Null until there are more. */
  readonly first: BackTestRow | null;
  /** Those that most steps tell of first. */
  readonly classes: readonly (BackTestRow & { readonly stepClass: string })[];
};

/** So many steps count as the first ones. */
export const firstSteps = 30;

/** Below so many steps nothing is said of whether ranges held as often as they claimed. */
const fewestToJudge = 20;
/** Nobody plans otherwise for four hundredths, however surely they are there. */
const worthTelling = 0.04;

/** What to make of it: within what luck does in 95 of 100 such rows, or so near that it makes no difference. */
export function judgedRow({
  steps,
  held,
  claimed,
}: BackTestRow): 'as claimed' | 'too narrow' | 'too wide' | null {
  if (steps < fewestToJudge) return null;
  const off = held / steps - claimed;
  const byLuck = 1.96 * Math.sqrt((claimed * (1 - claimed)) / steps);
  if (Math.abs(off) <= Math.max(byLuck, worthTelling)) return 'as claimed';
  return off < 0 ? 'too narrow' : 'too wide';
}

/**
 * Foretells every step anew by today's model, each from what was learned of those that were finished before it, and holds
 * what it took against that. The very first step has nothing before it and only teaches.
 *
 * @param lessons in any order
 * @param from what was learned before all of them, from hours that were kept elsewhere
 * @param each how many steps are tried between two results
 * @yields what it came to so far; returns what it came to
 */
export function* backTest(
  lessons: readonly Lesson[],
  from: LearnedMinutes,
  each: number,
): Generator<BackTest, BackTest> {
  const ordered = lessons.toSorted((a, b) => a.at - b.at);
  const [whole, first] = [createTally(), createTally()];
  const classes = new Map<string, Tally>();
  let learned = from;
  let [tried, foretoldSteps] = [0, 0];
  const soFar = (): BackTest => ({
    done: tried,
    of: ordered.length,
    whole: whole.row(),
    first: foretoldSteps > firstSteps ? first.row() : null,
    classes: [...classes]
      .flatMap(([stepClass, tally]) => {
        const row = tally.row();
        return row === null ? [] : [{ stepClass, ...row }];
      })
      .sort((a, b) => b.steps - a.steps || (a.stepClass < b.stepClass ? -1 : 1)),
  });
  for (const lesson of ordered) {
    const foretold =
      learned.steps === 0 ? null : foreseenMinutes(learned, lesson.stepClass, lesson.scheduled);
    if (foretold !== null) {
      const expected = rangeOf(foretold);
      if (foretoldSteps < firstSteps) first.add(lesson, expected);
      foretoldSteps += 1;
      whole.add(lesson, expected);
      const own = classes.get(lesson.stepClass) ?? createTally();
      classes.set(lesson.stepClass, own);
      own.add(lesson, expected);
    }
    learned = teach(learned, [lesson]);
    tried += 1;
    if (tried % each === 0 && tried < ordered.length) yield soFar();
  }
  return soFar();
}

type Tally = {
  readonly add: (lesson: Lesson, expected: Expectation) => void;
  readonly row: () => BackTestRow | null;
};

function createTally(): Tally {
  const [missed, scheduleMissed]: readonly [Misses, Misses] = [createMisses(), createMisses()];
  let [steps, held, claimed] = [0, 0, 0];
  return {
    add: ({ minutes, scheduled }, expected) => {
      steps += 1;
      // Every range claims the same.
      claimed = expected.chance;
      if (verdictOn(minutes, expected) === 'inside') held += 1;
      missed.add(minutes / expected.minutes);
      scheduleMissed.add(minutes / scheduled);
    },
    row: () =>
      steps === 0
        ? null
        : {
            steps,
            held,
            claimed,
            missed: missed.middle(),
            scheduleMissed: scheduleMissed.middle(),
          },
  };
}
