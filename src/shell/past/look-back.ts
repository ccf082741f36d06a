import { factsOfPiece, foldBench, type Bench } from '../../tracker/bench/index.ts';
import {
  finishedShare,
  finishedTogether,
  type FinishedShare,
} from '../../tracker/estimate/index.ts';
import {
  backTest,
  lessonsOf,
  notTaught,
  teachImports,
  type BackTest,
  type Lesson,
} from '../../tracker/learning/index.ts';
import { reviewOf } from '../../tracker/review/index.ts';
import { monthIn } from '../../views/format/index.ts';
import type { YearReader } from './learn-history.ts';
import type { BenchNow, LookBackTold, LookBackWish, WorkerStart } from './worker-words.ts';

export type LookBackRoom = {
  readonly years: readonly number[];
  readonly reader: YearReader;
  readonly tell: (told: LookBackTold) => void;
  /** Lets wishes in that came meanwhile. */
  readonly pause: () => Promise<void>;
};

/** So many steps are foretold between two looks at what is wished for: about a tenth of a second. */
const stepsAtATime = 1000;

type ReadYear = {
  readonly year: number;
  readonly share: FinishedShare;
  readonly lessons: readonly Lesson[];
};

/**
 * Reads all past years, the last first, and looks them over; then does what is wished for, and looks them over again
 * whenever the bench is another.
 *
 * @returns what takes wishes, and a promise that is broken by what goes wrong
 */
export function lookBack(
  { bench: first, zone }: Extract<WorkerStart, { do: 'look back' }>,
  { years, reader, tell, pause }: LookBackRoom,
): { readonly wish: (wish: LookBackWish) => void; readonly failed: Promise<never> } {
  const read: ReadYear[] = [];
  const problems: string[] = [];
  let now: BenchNow = first;
  let bench: Bench = foldBench(first.facts, undefined, first.clock);
  let isReviewDue = true;
  let isTestDue = false;
  let trying: Generator<BackTest, BackTest> | null = null;
  let sought: string | null = null;
  let wake: () => void = () => undefined;

  const readYear = (year: number): void => {
    const history = reader.readHistory(year);
    if (!history.ok) {
      problems.push(`${history.problem.says} ${history.problem.todo}`);
      return;
    }
    // Year by year: all of them folded at once would take several times the room.
    const then = foldBench(history.value.facts);
    const isNew = (piece: string): boolean => !read.some(({ share }) => share.ids.has(piece));
    const lessons = lessonsOf(then).filter(({ piece }) => isNew(piece));
    read.push({ year, share: finishedShare(then, now.now), lessons });
  };

  /** @returns whether what is sought was settled */
  const find = (piece: string, isAllRead: boolean): boolean => {
    const found = read.find(({ share }) => share.ids.has(piece));
    if (found === undefined) return isAllRead;
    const history = reader.readHistory(found.year);
    if (history.ok)
      tell({ is: 'found', piece, facts: factsOfPiece(history.value.facts, piece).facts });
    return true;
  };

  const review = (): void => {
    const shares = [finishedShare(bench, now.now), ...read.map(({ share }) => share)];
    const whole = reviewOf(finishedTogether(shares), monthIn(zone));
    tell({ is: 'review', review: whole, problems });
  };

  const begunTest = (): Generator<BackTest, BackTest> => {
    const past = read
      .flatMap(({ lessons }) => lessons)
      .filter(({ piece }) => !bench.pieces.has(piece));
    const { minutes } = teachImports(notTaught, bench.imports ?? []);
    return backTest([...lessonsOf(bench), ...past], minutes, stepsAtATime);
  };

  const test = (running: Generator<BackTest, BackTest>): void => {
    const { value, done: isWhole = false } = running.next();
    trying = isWhole ? null : running;
    tell({ is: 'tried', result: value, isWhole });
  };

  /** Does the next that is due. @returns false for nothing */
  const next = (): boolean => {
    if (sought !== null) {
      find(sought, true);
      sought = null;
    } else if (isReviewDue) {
      isReviewDue = false;
      review();
    } else if (isTestDue) {
      isTestDue = false;
      trying = begunTest();
    } else if (trying !== null) test(trying);
    else return false;
    return true;
  };

  const work = async (): Promise<never> => {
    for (const [index, year] of years.toReversed().entries()) {
      readYear(year);
      tell({ is: 'read', done: index + 1, of: years.length });
      await pause();
      if (sought !== null && find(sought, false)) sought = null;
    }
    for (;;) {
      if (next()) await pause();
      else await new Promise<void>((resolve) => (wake = resolve));
    }
  };

  return {
    wish: (wish) => {
      if (wish.do === 'find') sought = wish.piece;
      else if (wish.do === 'back-test') isTestDue = true;
      else {
        now = wish.bench;
        bench = foldBench(now.facts, undefined, now.clock);
        isReviewDue = true;
      }
      wake();
    },
    failed: work(),
  };
}
