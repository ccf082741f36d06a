import { minute, type Instant } from '../time/index.ts';
import type { EdgeSense, StampEvent, Window } from '../windows/model.ts';
import type { Bench } from './bench.ts';
import type { Piece, PlannedStep, Stamp } from './piece.ts';
import { windowsOf, windowsOfPiece } from './piece-windows.ts';
import { openPots, windowsOfPot } from './pot-window.ts';
import { countsFor, isDone, nextStamp, passUnderWay, stampsOf } from './progress.ts';
import { sessionHolding } from './standing.ts';

/** Events that a step's sequence seldom expects: they are stamped outright. */
const outright: readonly StampEvent[] = [
  'topped-up',
  'covered',
  'uncovered',
  'in-clamps',
  'clamps-off',
  'turned',
  'last-stroke',
  'washed-out',
];

/** A stamp that would change what runs on a piece, with the window that tells most about it before and after. */
export type OutrightStamp = {
  readonly step: PlannedStep;
  readonly event: StampEvent;
  readonly agent: string | null;
  /** Null where the stamp begins it. */
  readonly before: Window | null;
  readonly after: Window;
};

type Moment = { readonly now: Instant; readonly sense: EdgeSense };

/**
 * Every stamp outside the sequence that would move, end or begin a window of what runs on a piece: each is tried on a
 * copy, so that no event is tied to a kind of window. The step in hand comes first, then the latest.
 *
 * @param part the part that it would be stamped for; null is the whole piece
 */
export function outrightStamps(
  bench: Bench,
  piece: Piece,
  part: string | null,
  moment: Moment,
): readonly OutrightStamp[] {
  const held = sessionHolding(bench, piece.id)?.targets.find(({ piece: id }) => id === piece.id);
  const begun = piece.steps.filter(({ id }) => stampsOf(piece, id, part).length > 0);
  const inOrder = [
    ...begun.filter(({ id }) => id === held?.step),
    ...begun.filter(({ id }) => id !== held?.step).toReversed(),
  ];
  const asked = { bench, piece, part, moment, windows: windowsOf(bench, piece, moment.sense) };
  return inOrder.flatMap((step) => ofStep(asked, step));
}

/** Those worth offering: edges are told to the minute, and what moves none of them by one would read as if nothing moved. */
export const offeredStamps = (
  ...asked: Parameters<typeof outrightStamps>
): readonly OutrightStamp[] =>
  outrightStamps(...asked).filter(
    ({ before, after }) => before === null || !isAlike(before, after, isSameMinute),
  );

/** Of what, and when, it is asked which stamps would change anything. */
type Asked = {
  readonly bench: Bench;
  readonly piece: Piece;
  readonly part: string | null;
  readonly moment: Moment;
  /** As they stand before any of them. */
  readonly windows: readonly Window[];
};

function ofStep(asked: Asked, step: PlannedStep): readonly OutrightStamp[] {
  const { bench, piece, part, moment } = asked;
  const made = stampsOf(piece, step.id, part);
  const agents = [...new Set(made.map(({ agent }) => agent))].toReversed();
  const isOpen = !isDone(piece, step.id, part);
  return outright.flatMap((event): readonly OutrightStamp[] => {
    if (event === 'last-stroke' && !isOpen) return [];
    if (event === (isCovered(made) ? 'covered' : 'uncovered')) return [];
    if (event === 'washed-out') {
      const pot = potWashed(bench, made, moment);
      if (pot !== null) return [{ step, event, agent: null, ...pot }];
    }
    for (const agent of agents) {
      if (isOpen && isNext(step, made, event, agent)) continue;
      const told = effectOf(asked, { step: step.id, event, agent });
      if (told !== null) return [{ step, event, agent, ...told }];
    }
    return [];
  });
}

const isCovered = (made: readonly Stamp[]): boolean =>
  made.findLast(({ event }) => event === 'covered' || event === 'uncovered')?.event === 'covered';

/** Whether the next-stamp key makes just that. */
function isNext(
  step: PlannedStep,
  made: readonly Stamp[],
  event: StampEvent,
  agent: string | null,
): boolean {
  const next = nextStamp(step, made);
  return next.kind === 'stamp' && next.event === event && next.agent === agent;
}

type Told = Pick<OutrightStamp, 'before' | 'after'>;

/** A shared pot runs in the shop, not on the piece that took from it. */
function potWashed(bench: Bench, made: readonly Stamp[], { now, sense }: Moment): Told | null {
  const pot = openPots(bench).find(({ id }) => made.some((stamp) => stamp.pot === id));
  const before = pot === undefined ? undefined : windowsOfPot(pot, sense)[0];
  return before === undefined ? null : { before, after: { ...before, closedAt: now } };
}

function effectOf(
  { bench, piece, part, moment, windows }: Asked,
  tried: Pick<Stamp, 'step' | 'event' | 'agent'>,
): Told | null {
  const { now, sense } = moment;
  const made = stampsOf(piece, tried.step, part);
  const stamp: Stamp = {
    ...tried,
    part,
    fact: 'tried',
    pass: passUnderWay(made),
    section: made.at(-1)?.section ?? null,
    at: now,
    air: null,
  };
  const stamped = { ...piece, stamps: [...piece.stamps, stamp] };
  const changed = windowsOfPiece(stamped, bench.sessions, sense).flatMap((after): Told[] => {
    if (after.subject.stepId !== tried.step || !countsFor(after.subject.partId, part)) return [];
    const before = windows.find(({ key }) => key === after.key) ?? null;
    if (before !== null && (isOver(before, now) || isAlike(before, after))) return [];
    return [{ before, after }];
  });
  return changed.find(({ after }) => isAwaited(piece, after, part)) ?? changed[0] ?? null;
}

const isOver = ({ closedAt }: Window, now: Instant): boolean =>
  closedAt !== null && closedAt <= now;

const isAlike = (a: Window, b: Window, isSame = isSameInstant): boolean =>
  a.closedAt === b.closedAt &&
  a.stretches.length === b.stretches.length &&
  a.stretches.every((stretch, index) => {
    const other = b.stretches[index];
    return (
      stretch.meaning === other?.meaning &&
      isSame(stretch.begins, other.begins) &&
      isSame(stretch.ends, other.ends)
    );
  });

const isSameInstant = (a: Instant | null, b: Instant | null): boolean => a === b;

const isSameMinute = (a: Instant | null, b: Instant | null): boolean =>
  a === null || b === null ? a === b : Math.floor(a / minute) === Math.floor(b / minute);

/** A window with a verb of its own, or a milestone for which a step that is still to do waits. */
const isAwaited = (piece: Piece, { rule }: Window, part: string | null): boolean =>
  rule.milestone === undefined ||
  piece.steps.some(
    (step) =>
      !step.skipped &&
      !isDone(piece, step.id, part) &&
      rule.milestone !== undefined &&
      step.needs.includes(rule.milestone),
  );
