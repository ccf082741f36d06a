import { knownOf } from '../bench/left-out.ts';
import type { Bench } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { openADay } from '../settings/shop-hours.ts';
import type { Settings } from '../settings/settings.ts';
import type { Instant } from '../time/index.ts';
import { branchesOf, type Branch } from '../trade/branches.ts';
import { nothingKnown } from '../trade/condition.ts';
import type { FinishingSchedule, Step } from '../trade/schedule.ts';
import type { EdgeSense } from '../windows/model.ts';
import { benchDays, type BenchDays, type DaysAround } from './bench-days.ts';
import { expectedMinutes, foreseenOn, fromSchedule } from './expected.ts';
import { totalOn } from './range-of-sum.ts';
import { branchMinutes, referencePiece, sizedIn } from './schedule-figures.ts';

/** What a piece that nothing was done to yet will take. */
export type PieceOutlook = {
  /** Hands-on minutes without setup: the low end of the quickest branch, the high end of the longest. */
  readonly lowMinutes: number;
  readonly highMinutes: number;
  /** The chance that either range claims, 0..1, and what it was taken from. */
  readonly chance: number;
  readonly model: string;
  readonly days: BenchDays;
  /** The same by the labels alone: without the shop's air, and without what checks have taught. */
  readonly labelDays: BenchDays;
};

/** What the day and the air are like. */
export type OutlookAround = Pick<DaysAround, 'open' | 'factorAt' | 'now'>;

/** What an outlook is worked out in: the shop's hours and the air of the moment. */
export const outlookAround = (
  { shopHours }: Pick<Settings, 'shopHours'>,
  { factorAt }: Pick<EdgeSense, 'factorAt'>,
  now: Instant,
): OutlookAround => ({ open: openADay(shopHours), factorAt, now });

/** Null once anything was done to the piece, and for one without steps. */
export function pieceOutlook(
  bench: Pick<Bench, 'estimator' | 'drying'>,
  piece: Piece,
  around: OutlookAround,
): PieceOutlook | null {
  if (piece.stamps.length > 0 || piece.finishes.length > 0) return null;
  const { products } = piece;
  const told = knownOf(piece);
  const steps = piece.steps.flatMap(asTold);
  const branches = branchesOf(steps, told);
  const sums = branches.map((branch) => ({ branch, ...branchMinutes(branch, piece) }));
  const [first] = sums;
  if (first === undefined || steps.length === 0) return null;
  const totalOf = ({ steps: kept, known }: Branch) => totalOn(bench, kept, sizedIn(known, piece));
  const quickest = totalOf(sums.reduce((a, b) => (b.low < a.low ? b : a), first).branch);
  const longest = totalOf(sums.reduce((a, b) => (b.high > a.high ? b : a), first).branch);
  const minutesOf = onceAStep(
    (step, answers) => foreseenOn(bench, step, sizedIn({ answers }, piece)).minutes,
  );
  const { open, now } = around;
  const days = benchDays({ steps, products }, told, { ...around, drying: bench.drying, minutesOf });
  return {
    lowMinutes: quickest?.low ?? 0,
    highMinutes: longest?.high ?? 0,
    chance: longest?.chance ?? 0,
    model: longest?.model ?? fromSchedule,
    days,
    labelDays: days.byLabel ? days : benchDays({ steps, products }, told, { open, now, minutesOf }),
  };
}

/** Only few steps take other minutes in another branch; foretelling those of all steps in all branches costs too much. */
function onceAStep(minutesOf: DaysAround['minutesOf']): DaysAround['minutesOf'] {
  const known = new Map<Step, number>();
  return (step, answers) => {
    if (step.minutesTimes !== undefined) return minutesOf(step, answers);
    const minutes = known.get(step) ?? minutesOf(step, answers);
    known.set(step, minutes);
    return minutes;
  };
}

/** A step that somebody took out is out, one that somebody kept is in, whatever its rule says. */
function asTold(step: PlannedStep): readonly PlannedStep[] {
  const { onlyIf: _, ...always } = step;
  if (step.told === undefined) return step.skipped && step.leftOut !== true ? [] : [step];
  return step.told ? [] : [always];
}

/** The days of a finishing schedule for a piece of which nothing is told, by its own minutes. */
export const scheduleDays = (
  { drying }: Pick<Bench, 'drying'>,
  schedule: Pick<FinishingSchedule, 'steps' | 'products'>,
  around: OutlookAround,
): BenchDays =>
  benchDays(schedule, nothingKnown, {
    ...around,
    drying,
    minutesOf: onceAStep(
      (step, answers) => expectedMinutes(step, sizedIn({ answers }, referencePiece)).minutes,
    ),
  });
