import { rulesOf } from '../bench/sorted-piece.ts';
import type { DryingTimes } from '../bench/bench.ts';
import type { Instant, Milliseconds } from '../time/index.ts';
import { branchesOf } from '../trade/branches.ts';
import type { KnownOfPiece } from '../trade/condition.ts';
import type { FinishingSchedule, Step } from '../trade/schedule.ts';
import type { EdgeSense, Milestone, OwnTime, WindowRule } from '../windows/model.ts';
import { senseWithOwnTime } from '../windows/own-time.ts';
import { daysTill, nextOpening, type ShopDay } from './shop-day.ts';
import { atTheBeginning, workStep, type CourseStep, type Place } from './step-course.ts';

/** On which day a piece is done at the earliest: over the branches, the soonest and the latest of these days. */
export type BenchDays = {
  readonly least: number;
  readonly most: number;
  /** The same from the first opening of the shop to the end of the last work. */
  readonly leastMs: Milliseconds;
  readonly mostMs: Milliseconds;
  /** Whether they are the labels' own: neither the air nor what checks have taught moved anything. */
  readonly byLabel: boolean;
};

/** What the days depend on beside the steps. */
export type DaysAround = {
  /** How long hands are at work on a day. */
  readonly open: Milliseconds;
  /** How many times the label's figure a span takes now; absent: the label's figures. */
  readonly factorAt?: EdgeSense['factorAt'] | undefined;
  readonly now: Instant;
  /** What checks have taught of the products. */
  readonly drying?: DryingTimes | undefined;
  /** Minutes of hands for a step, the middle of what is expected. */
  readonly minutesOf: (step: Step, answers: KnownOfPiece['answers']) => number;
};

/**
 * How many days a piece stays on the bench at least, begun in the morning of the first: each step as soon as what it
 * needs is open and hands are at work, nothing else in their way. Hands take what is expected of them without setup;
 * windows run on through the nights, by the air as it is now. Rounds that are repeated until right count once. A cure
 * counts where a step waits for it.
 *
 * Going on as soon as possible is never later in the end, but for coats that must not be put on for a while: before one
 * of these, beginning it the next morning is tried too.
 */
export function benchDays(
  schedule: Pick<FinishingSchedule, 'steps' | 'products'>,
  told: KnownOfPiece,
  around: DaysAround,
): BenchDays {
  const needed = new Set(schedule.steps.flatMap(({ needs }) => needs));
  let byLabel = true;
  const courseOf = courseIn({ ...schedule, needed }, around, () => {
    byLabel = false;
  });
  const beginning: Way = { places: [atTheBeginning], on: new Map() };
  const ends = branchesOf(schedule.steps, told).map(({ steps, known }) => {
    const way = steps.reduce((before, step): Way => {
      const course = courseOf(step, around.minutesOf(step, known.answers), known.wood);
      return wayOn(before, course, around);
    }, beginning);
    return Math.min(...way.places.map(({ now }) => now));
  });
  const [leastMs, mostMs] = [Math.min(...ends), Math.max(...ends)];
  return { least: daysTill(leastMs), most: daysTill(mostMs), leastMs, mostMs, byLabel };
}

/** Where a piece could be after a number of steps, and the ways on that were walked from there. */
type Way = { readonly places: readonly Place[]; readonly on: Map<CourseStep, Way> };

/** What branches have in common from their beginning on is walked once. */
function wayOn(before: Way, course: CourseStep, shopDay: ShopDay): Way {
  const known = before.on.get(course);
  if (known !== undefined) return known;
  const places = before.places.flatMap((place) => waysThrough(place, course, shopDay));
  const way: Way = { places, on: new Map() };
  before.on.set(course, way);
  return way;
}

function waysThrough(place: Place, course: CourseStep, shopDay: ShopDay): readonly Place[] {
  const hasGap = course.windows.some(({ rule }) =>
    rule.stretches.some(({ meaning }) => meaning === 'keep off'),
  );
  const soonest = workStep(place, course, shopDay);
  if (!hasGap) return [soonest];
  const nextMorning = { ...place, now: nextOpening(soonest.begunAt) };
  return [soonest, workStep(nextMorning, course, shopDay)];
}

/** Steps as they are worked. Milestones that no step waits for are left out: a piece starts many of them. */
function courseIn(
  { products, needed }: Pick<FinishingSchedule, 'products'> & { needed: ReadonlySet<Milestone> },
  { factorAt, now, drying }: DaysAround,
  moved: () => void,
): (step: Step, minutes: number, wood: KnownOfPiece['wood']) => CourseStep {
  const sense: EdgeSense = {
    spanEnd: (span, from) => {
      const factor = factorAt?.(span, now) ?? 1;
      if (factor !== 1) moved();
      return from + Math.round(span.ms * factor);
    },
    // No finishing schedule opens a window by the clock; if one did, it would hold nothing up here.
    nextClock: (from) => from,
  };
  const known = new Map<string, CourseStep>();
  return (step, minutes, wood) => {
    const product = step.product === undefined ? undefined : products[step.product];
    // The same step alike is one object, so that branches can be told to have it in common.
    const key = `${step.id}/${minutes}/${product?.byWood === undefined ? '' : wood}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const own = (rule: WindowRule): OwnTime | undefined => {
      const time = product === undefined ? null : drying?.own(product, rule);
      if (time) moved();
      return time ?? undefined;
    };
    const windows = rulesOf({ products, wood }, step)
      .filter(({ milestone }) => milestone === undefined || needed.has(milestone))
      .map((rule) => ({ rule, sense: senseWithOwnTime(sense, rule, own(rule)) }));
    const course = { step, minutes, windows };
    known.set(key, course);
    return course;
  };
}
