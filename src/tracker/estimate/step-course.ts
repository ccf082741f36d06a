import { isChosen } from '../bench/window-closing.ts';
import { minute, type Instant, type Milliseconds } from '../time/index.ts';
import { trialWindow, type PlannedStamp, type Step } from '../trade/schedule.ts';
import type { Happenings, SubjectStamp } from '../windows/edges.ts';
import { opensAt, stretchAt, workOutWindow } from '../windows/evaluate.ts';
import type { EdgeSense, Milestone, Window, WindowRule } from '../windows/model.ts';
import { workBegins, workEnds, type ShopDay } from './shop-day.ts';

/** How far a piece has come on its way: when hands are free, and what later steps wait for. */
export type Place = {
  readonly now: Instant;
  /** When the last step was begun. */
  readonly begunAt: Instant;
  readonly milestones: ReadonlyMap<Milestone, Window>;
  /** By the id of the step that waits for its trial. */
  readonly trials: ReadonlyMap<string, Window>;
};

export const atTheBeginning: Place = {
  now: 0,
  begunAt: 0,
  milestones: new Map(),
  trials: new Map(),
};

/** A step as it is worked: the windows it starts, each in the air and the time it opens by, and minutes of hands. */
export type CourseStep = {
  readonly step: Step;
  readonly minutes: number;
  readonly windows: readonly { readonly rule: WindowRule; readonly sense: EdgeSense }[];
};

/**
 * Works one step as soon as everything lets it: what it needs is open and hands are at work. Its strokes and passes take
 * their share of its minutes. Where a late coat costs work but may go on, it goes on.
 */
export function workStep(place: Place, course: CourseStep, shopDay: ShopDay): Place {
  const { step, minutes } = course;
  const passes = Math.max(1, step.passes ?? 1);
  const own = (minutes * minute) / passes;
  // From the first stroke to the last of one pass: hands, or a dwell that takes longer than they do.
  const length = passFrom(0, own, course, 1, []).at(-1)?.at ?? own;
  const mayRest = step.stamps.length === 0 && step.product === undefined;
  const trial = place.trials.get(step.id);
  let gates: readonly Window[] = [
    ...step.needs.flatMap((need) => place.milestones.get(need) ?? []),
    ...(trial === undefined ? [] : [trial]),
  ];
  let { now } = place;
  let before: readonly PassStamp[] = [];
  for (let pass = 1; pass <= passes; pass += 1) {
    const begins = firstLetBy(gates, now, (at) => workBegins(at, length, mayRest, shopDay));
    const stamps = mayRest
      ? [lastStroke(workEnds(begins, own, shopDay), step, pass)]
      : passFrom(begins, own, course, pass, before);
    before = [...before, ...stamps];
    now = stamps.at(-1)?.at ?? begins;
    gates = pass < passes ? windowsOf(course, before, pass, endsWithNextPass) : [];
  }
  const started = windowsOf(course, before, passes, isAwaited);
  return {
    now,
    begunAt: before[0]?.at ?? now,
    milestones: withMilestones(place.milestones, started),
    trials: withTrials(place.trials, step, started),
  };
}

type PassStamp = SubjectStamp & { readonly pass: number };

/**
 * The stamps of one pass that begins at an instant: each as soon as the window that it closes has opened, B once A has
 * stood; the last stroke when the hands' share is over too.
 */
function passFrom(
  begins: Instant,
  own: Milliseconds,
  course: CourseStep,
  pass: number,
  before: readonly PassStamp[],
): readonly PassStamp[] {
  const { step } = course;
  const stamps: PassStamp[] = [];
  let now = begins;
  const put = (event: PlannedStamp['event'], agent: string | null, earliest: Instant): void => {
    const ending = windowsOf(course, [...before, ...stamps], pass, endsWith(event, agent));
    now = Math.max(now, earliest, ...ending.map((window) => opensAt(window) ?? now));
    stamps.push({ event, agent, at: now, fact: '', pass });
  };
  for (const { event, agent } of step.stamps)
    put(event, agent ?? null, event === 'section-off' ? begins + own : begins);
  put('last-stroke', lastAgent(step), begins + own);
  return stamps;
}

const lastAgent = ({ stamps }: Step): string | null =>
  stamps.findLast(({ agent }) => agent !== undefined)?.agent ?? null;

const lastStroke = (at: Instant, step: Step, pass: number): PassStamp => ({
  event: 'last-stroke',
  agent: lastAgent(step),
  at,
  fact: '',
  pass,
});

type Wanted = (rule: WindowRule) => boolean;

const endsWithNextPass: Wanted = ({ closedBy }) => closedBy.by === 'next pass';

const isAwaited: Wanted = ({ id, milestone }) => milestone !== undefined || id === trialWindow;

const endsWith =
  (event: string, agent: string | null): Wanted =>
  ({ closedBy }) =>
    closedBy.by === 'stamp' && isChosen(closedBy.stamp, event, agent);

/** The windows of a step that have begun, those of one pass and those of all. */
function windowsOf(
  { step, windows }: CourseStep,
  stamps: readonly PassStamp[],
  pass: number,
  wanted: Wanted,
): readonly Window[] {
  const subject = { pieceId: '', stepId: step.id, partId: null, pass, section: null };
  return windows.flatMap(({ rule, sense }) => {
    if (!wanted(rule)) return [];
    const own = rule.scope === 'step' ? stamps : stamps.filter((stamp) => stamp.pass === pass);
    const [first] = own;
    const happenings: Happenings = {
      stamps: own,
      checks: [],
      assumedStart: first === undefined ? null : { at: first.at, fact: '' },
    };
    return workOutWindow({ key: rule.id, rule, subject }, happenings, sense) ?? [];
  });
}

/** A coat takes the place of the one before it, milestone by milestone. */
function withMilestones(
  before: Place['milestones'],
  started: readonly Window[],
): Place['milestones'] {
  const own = started.flatMap((window): (readonly [Milestone, Window])[] =>
    window.rule.milestone === undefined ? [] : [[window.rule.milestone, window]],
  );
  return own.length === 0 ? before : new Map([...before, ...own]);
}

function withTrials(
  before: Place['trials'],
  { trialFor = [] }: Step,
  started: readonly Window[],
): Place['trials'] {
  const trial = started.find(({ rule }) => rule.id === trialWindow);
  if (trial === undefined) return before;
  return new Map([...before, ...trialFor.map((step) => [step, trial] as const)]);
}

/** The first instant that the windows and the shop's day both allow, from one on. */
function firstLetBy(
  gates: readonly Window[],
  from: Instant,
  inShop: (at: Instant) => Instant,
): Instant {
  let now = from;
  for (;;) {
    const next = inShop(Math.max(now, ...gates.map((window) => letOnAt(window, now))));
    if (next === now) return now;
    now = next;
  }
}

/** From an instant on: when a window neither makes wait nor keeps off. One whose end is not known holds nothing up. */
function letOnAt(window: Window, from: Instant): Instant {
  const { meaning, ends } = stretchAt(window, from);
  if (meaning !== 'wait' && meaning !== 'keep off') return from;
  return ends === null ? from : letOnAt(window, ends);
}
