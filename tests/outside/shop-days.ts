import { lockOn, nextAct, questionOf, type PlannedStep } from '../../src/tracker/bench/index.ts';
import { day, minute, type Instant, type Milliseconds } from '../../src/tracker/time/index.ts';
import { opensAt, stateAt, type Window } from '../../src/tracker/windows/index.ts';
import { atTheLabel, monday, type Work } from './work.ts';

/** Another person's answers to what steps ask, by the id of the step. */
type Answers = Readonly<Record<string, string>>;

/** A piece that is worked through the program's door as soon as it lets, by somebody who keeps shop hours. */
type Person = { readonly work: Work; readonly now: Instant };

/**
 * When the last step is done at the earliest. Nothing is known here of how days are counted ahead: each press goes
 * through the door, each wait is read off the windows that the presses began, and hands are counted minute by minute.
 */
export function doneAt(work: Work, answers: Answers, open: Milliseconds): Instant {
  const ends: Instant[] = [];
  let people: readonly Person[] = [{ work, now: monday }];
  while (people.length > 0)
    people = people.flatMap((person) => {
      const next = stepToDo(person.work, person.now);
      if (next === null) {
        ends.push(person.now);
        return [];
      }
      return stepDone(person, next, answers, open);
    });
  return Math.min(...ends);
}

const stepToDo = ({ bench, piece }: Work, now: Instant): PlannedStep | null => {
  const next = nextAct(bench, piece, null, { now, sense: atTheLabel });
  return next.act === 'nothing left' ? null : next.step;
};

/** Works one step; before a coat with a forbidden gap in two ways: at once, and the next morning. */
function stepDone(
  { work, now }: Person,
  step: PlannedStep,
  answers: Answers,
  open: Milliseconds,
): readonly Person[] {
  const judged = trialJudged(copyOf(work), step, now);
  const [soonest, begun] = passesDone(judged, step, open);
  const hasGap = soonest.work
    .windows()
    .some(
      ({ subject, rule }) =>
        subject.stepId === step.id && rule.stretches.some(({ meaning }) => meaning === 'keep off'),
    );
  const ways = hasGap
    ? [soonest, passesDone({ ...judged, now: morningAfter(begun) }, step, open)[0]]
    : [soonest];
  return ways.map((way) => answered(way, step, answers));
}

function trialJudged(work: Work, step: PlannedStep, from: Instant): Person {
  if (lockOn(work.piece, step) === null) return { work, now: from };
  const window = work.window('trial');
  const now = Math.max(from, opensAt(window) ?? from);
  work.check('ready', window.key, now);
  return { work, now };
}

function passesDone(
  { work, now }: Person,
  step: PlannedStep,
  open: Milliseconds,
): readonly [Person, begun: Instant] {
  const passes = step.passes ?? 1;
  let person: Person = { work, now };
  let begun: Instant | null = null;
  for (let pass = 1; pass <= passes; pass += 1) {
    const [after, at] = passDone(person, step, pass, open);
    begun ??= at;
    person = after;
  }
  return [person, begun ?? now];
}

/** Tries every minute of the day until one lets the whole pass be done. */
function passDone(
  { work, now }: Person,
  step: PlannedStep,
  pass: number,
  open: Milliseconds,
): readonly [Person, begun: Instant] {
  const waits = work
    .windows()
    .filter(
      (window) =>
        window.closedAt === null &&
        (pass === 1
          ? step.needs.some((need) => need === window.rule.milestone)
          : window.rule.closedBy.by === 'next pass' && window.subject.stepId === step.id),
    );
  const mayRest = step.stamps.length === 0 && step.product === undefined;
  const own = Math.round((step.minutes.typical * minute) / (step.passes ?? 1));
  const atWork = (at: Instant): boolean => (at - monday) % day < open;
  for (let at = now; ; at = nextTry(at, waits, atWork)) {
    if (!atWork(at) || waits.some((window) => isShut(window, at))) continue;
    const done = strokesDone(copyOf(work), step, { pass, at, own, mayRest, atWork });
    const sameDay = Math.floor((at - monday) / day) === Math.floor((done.now - 1 - monday) / day);
    const fits = sameDay && (done.now - 1 - monday) % day < open;
    const isWholeDay = (at - monday) % day === 0;
    if (fits || mayRest || isWholeDay) return [done, at];
  }
}

/** The next minute that could do: in the night and before an opening none of them can. */
function nextTry(at: Instant, waits: readonly Window[], atWork: (at: Instant) => boolean): Instant {
  const opening = Math.max(0, ...waits.flatMap((window) => openingAfter(window, at)));
  if (opening > at) return opening;
  return atWork(at) ? at + minute : morningAfter(at);
}

const openingAfter = (window: Window, at: Instant): readonly Instant[] => {
  const stretch = window.stretches.findLast(({ begins }) => begins <= at);
  return stretch?.ends === null || stretch === undefined || !isShut(window, at)
    ? []
    : [stretch.ends];
};

const isShut = (window: Window, at: Instant): boolean =>
  ['before', 'barred'].includes(stateAt(window, at));

const morningAfter = (at: Instant): Instant => monday + (Math.floor((at - monday) / day) + 1) * day;

type Pass = {
  readonly pass: number;
  readonly at: Instant;
  readonly own: Milliseconds;
  readonly mayRest: boolean;
  readonly atWork: (at: Instant) => boolean;
};

/** Presses the next-stamp key until the pass is over, each time as soon as the step's own windows let. */
function strokesDone(
  work: Work,
  step: PlannedStep,
  { pass, at, own, mayRest, atWork }: Pass,
): Person {
  const worked = mayRest ? minutesLater(at, own, atWork) : at + own;
  let now = at;
  for (;;) {
    const next = nextAct(work.bench, work.piece, null, { now, sense: atTheLabel });
    if (next.act === 'nothing left' || next.step.id !== step.id) return { work, now };
    const isNewPass = next.act === 'stamp' && next.next.pass > pass;
    if (isNewPass) return { work, now };
    const ownWindows = work
      .windows()
      .filter(
        ({ subject, rule, closedAt }) =>
          subject.stepId === step.id &&
          closedAt === null &&
          rule.milestone === undefined &&
          rule.closedBy.by === 'stamp',
      );
    now = Math.max(now, ...ownWindows.map((window) => opensAt(window) ?? now));
    const isLast =
      next.act === 'done' ||
      (next.act === 'stamp' && ['last-stroke', 'section-off'].includes(next.next.event));
    if (isLast) now = Math.max(now, worked);
    if (next.act === 'done' || (next.act === 'stamp' && next.next.event === 'section-off')) {
      work.done(now);
      return { work, now };
    }
    work.press(now);
  }
}

function minutesLater(from: Instant, own: Milliseconds, atWork: (at: Instant) => boolean): Instant {
  let at = from;
  for (let left = own; left > 0; at += minute) if (atWork(at)) left -= minute;
  return at;
}

function answered({ work, now }: Person, step: PlannedStep, answers: Answers): Person {
  for (const { rule, closedAt } of work.windows())
    if (rule.kind === 'pot' && closedAt === null) work.stamp('washed-out', now);
  const asks = questionOf(work.piece, step.id);
  const answer = asks === null ? undefined : answers[asks.id];
  if (asks !== null && answer !== undefined)
    work.act({ do: 'answer', piece: work.piece.id, step: asks.id, answer }, now);
  return { work, now };
}

/** Facts are never changed, only added to: a copy goes its own way from here. */
const copyOf = (work: Work): Work =>
  Object.assign(Object.create(Object.getPrototypeOf(work) as object) as Work, work);
