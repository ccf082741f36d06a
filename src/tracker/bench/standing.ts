import type { Instant } from '../time/index.ts';
import { opensAt, stateAt } from '../windows/evaluate.ts';
import type { EdgeSense, Window } from '../windows/model.ts';
import { costsSoon, foremost, losesSurface, losingAt, orderOf, rankOf } from './foremost.ts';
import type { Bench, OddTimer, Pot, Session } from './bench.ts';
import type { Piece, PlannedStep } from './piece.ts';
import { awaitedWindowsOf, windowsOf } from './piece-windows.ts';
import { countsFor, currentStep, isDone } from './progress.ts';
import { openPots, windowsOfPot } from './pot-window.ts';
import { stepUnderWay } from './step-under-way.ts';
import { timerWindow } from './timer-window.ts';
import { waitsFor } from './waits-for.ts';

/** How a piece stands, from what is lost first to what asks for nothing. The order of this list is the order of the bench. */
export const ranks = [
  'spoils',
  'in hand',
  'costs work',
  'costs nothing',
  'keep off',
  'waits',
  'finished',
  'hold',
  'curing',
] as const;
export type Rank = (typeof ranks)[number];

/** One row of the bench at one instant: a piece, an odd timer, or a pot. */
export type Standing = {
  readonly key: string;
  readonly piece: Piece | null;
  readonly timer: OddTimer | null;
  /** A shared pot, which has a row of its own. */
  readonly pot: Pot | null;
  /** The part that decided, where the piece has parts. */
  readonly part: string | null;
  readonly rank: Rank;
  /** The step that the keys go on with for that part. */
  readonly step: PlannedStep | null;
  /** The window that decides what is shown, if one does. */
  readonly window: Window | null;
  /** Every live window of the piece that somebody waits for or that can lose something. */
  readonly windows: readonly Window[];
  readonly session: Session | null;
  /** What orders rows of one rank: a closing, an opening, or when it came to wait. */
  readonly orderAt: Instant;
};

const knownInHand = new WeakMap<Bench, readonly Session[]>();

/** Open sessions, first picked up first; looked for once in all the sessions of a bench, as each row of it asks. */
export function inHand(bench: Bench): readonly Session[] {
  let open = knownInHand.get(bench);
  if (open === undefined) {
    open = bench.sessions.filter((session) => session.end === null && !session.dropped);
    knownInHand.set(bench, open);
  }
  return open;
}

/** The open session that holds a piece; null where it isn't in hand. */
export const sessionHolding = (bench: Bench, piece: string): Session | null =>
  inHand(bench).find((session) => session.targets.some((target) => target.piece === piece)) ?? null;

/** Whether a session is for that step of a piece, as far as one part (null: the whole piece) is concerned. */
export const isInHandFor = (
  session: Session | null,
  piece: string,
  step: string,
  part: string | null,
): boolean =>
  session?.targets.some(
    (target) => target.piece === piece && target.step === step && countsFor(target.part, part),
  ) ?? false;

/** In the order of their numbers. */
export const piecesOnBench = (bench: Bench): readonly Piece[] =>
  [...bench.pieces.values()]
    .filter((piece) => piece.place === 'bench')
    .sort((a, b) => (a.number ?? 0) - (b.number ?? 0));

/** The parts worked separately, or the piece as one. */
export const lanesOf = (piece: Piece): readonly (string | null)[] =>
  piece.parts.length === 0 ? [null] : piece.parts.map((part) => part.id);

type Rows = {
  readonly now: Instant;
  readonly sense: EdgeSense;
  readonly rows: readonly Standing[];
};
const knownRows = new WeakMap<Bench, Rows>();

/**
 * All rows of the bench, in their order; the last ones asked for are remembered, since a key, its frame and the pings ask
 * for the same instant. An odd timer has one to itself, also where it is for a piece: folded into the
 * piece's it would be hidden by what else runs there, and no key could close it.
 */
export function standingsAt(bench: Bench, now: Instant, sense: EdgeSense): readonly Standing[] {
  const before = knownRows.get(bench);
  if (before?.now === now && before.sense === sense) return before.rows;
  const rows: readonly Standing[] = [
    ...piecesOnBench(bench).map((piece) => standingOf(bench, piece, now, sense)),
    ...bench.timers
      .filter((timer) => timer.closedAt === null)
      .map((timer) => standingOfTimer(timer, now, sense)),
    ...openPots(bench).map((pot) => standingOfPot(pot, now, sense)),
  ].sort(byOrder);
  knownRows.set(bench, { now, sense, rows });
  return rows;
}

const byOrder = (a: Standing, b: Standing): number =>
  ranks.indexOf(a.rank) - ranks.indexOf(b.rank) ||
  a.orderAt - b.orderAt ||
  (a.piece?.number ?? 0) - (b.piece?.number ?? 0);

/** How one piece stands: the worst of its parts. */
export function standingOf(bench: Bench, piece: Piece, now: Instant, sense: EdgeSense): Standing {
  // Asked about a moment before its last record, a window that is over now may have been open then.
  const all =
    lastTouched(piece) <= now
      ? awaitedWindowsOf(bench, piece, sense)
      : windowsOf(bench, piece, sense);
  const session = sessionHolding(bench, piece.id);
  const lanes = lanesOf(piece).map((part) => standingOfLane(piece, part, all, session, now));
  const worst = lanes.sort(byOrder)[0];
  if (worst === undefined) throw new Error('a piece has at least one lane');
  const windows = [...new Set(lanes.flatMap((lane) => lane.windows))];
  return { ...worst, windows };
}

function standingOfLane(
  piece: Piece,
  part: string | null,
  all: readonly Window[],
  session: Session | null,
  now: Instant,
): Standing {
  const step = stepUnderWay(piece, part, session);
  const live = all.filter(
    ({ subject, closedAt }) =>
      (closedAt === null || closedAt > now) && (subject.partId === null || subject.partId === part),
  );
  const turn = currentStep(piece, part);
  const { wanted: windows, byCurrentStep } = wantedWindows(piece, part, turn, live);
  const window = foremost(windows, now);
  const base = { key: piece.id, piece, timer: null, pot: null, part, step, windows, session };
  const waits = { ...base, window: null, orderAt: lastTouched(piece) };
  if (window !== null && losesSurface(window, now)) {
    return { ...base, window, rank: 'spoils', orderAt: losingAt(window, now) };
  }
  const holdsLane = session?.targets.some(
    (target) => target.piece === piece.id && countsFor(target.part, part),
  );
  if (session !== null && holdsLane === true)
    return { ...base, window, rank: 'in hand', orderAt: session.start };
  // A piece whose next step waits for something else still has work for hands.
  const isNext = byCurrentStep || window?.rule.milestone === undefined;
  if (isNext && window?.rule.kind === 'cure' && stateAt(window, now) === 'before') {
    return { ...base, window, rank: 'curing', orderAt: opensAt(window) ?? now };
  }
  const isDecisive = window !== null && (isNext || costsSoon(window, now));
  if (window === null || !isDecisive) {
    if (piece.hold !== null) return { ...waits, rank: 'hold', orderAt: piece.hold.since };
    return { ...waits, rank: step === null ? 'finished' : 'waits' };
  }
  return { ...base, window, rank: rankOf(window, now), orderAt: orderOf(window, now) };
}

/**
 * The windows that count for a part: those with a verb of their own, and the milestones for which the first step that
 * waits for any is waiting. Once every step is done, the cures that still run.
 */
function wantedWindows(
  piece: Piece,
  part: string | null,
  step: PlannedStep | null,
  live: readonly Window[],
): { readonly wanted: readonly Window[]; readonly byCurrentStep: boolean } {
  const own = live.filter((window) => window.rule.milestone === undefined);
  if (step === null) {
    const cures = live.filter(
      (window) => window.rule.kind === 'cure' && window.rule.milestone !== undefined,
    );
    return { wanted: [...own, ...stagesOfCure(cures)], byCurrentStep: true };
  }
  const undone = piece.steps.filter((each) => !each.skipped && !isDone(piece, each.id, part));
  for (const waiting of undone) {
    const needed = live.filter((window) => waitsFor(piece, waiting, window, part));
    if (needed.length > 0) return { wanted: [...own, ...needed], byCurrentStep: waiting === step };
  }
  return { wanted: own, byCurrentStep: true };
}

/** The last of them to open, and light use before it: from then on the piece may go to whoever waits for it. */
function stagesOfCure(cures: readonly Window[]): readonly Window[] {
  const last = cures.reduce<Window | null>(
    (latest, window) =>
      latest === null || (opensAt(window) ?? 0) > (opensAt(latest) ?? 0) ? window : latest,
    null,
  );
  return cures.filter((window) => window === last || window.rule.milestone === 'light use');
}

const knownTouched = new WeakMap<Piece, Instant>();

/** When something was last put on a piece, finished or tried; looked for once, as every row asks at every tick. */
export function lastTouched(piece: Piece): Instant {
  let last = knownTouched.get(piece);
  if (last === undefined) {
    const { addedAt, stamps, finishes, checks } = piece;
    last = Math.max(addedAt, ...[...stamps, ...finishes, ...checks].map(({ at }) => at));
    knownTouched.set(piece, last);
  }
  return last;
}

function standingOfPot(pot: Pot, now: Instant, sense: EdgeSense): Standing {
  const windows = windowsOfPot(pot, sense);
  const window = foremost(windows, now);
  const isLosing = window !== null && losesSurface(window, now);
  return {
    key: pot.id,
    piece: null,
    timer: null,
    pot,
    part: null,
    rank: isLosing ? 'spoils' : window === null ? 'waits' : rankOf(window, now),
    step: null,
    window,
    windows,
    session: null,
    orderAt:
      window === null ? pot.mixedAt : isLosing ? losingAt(window, now) : orderOf(window, now),
  };
}

function standingOfTimer(timer: OddTimer, now: Instant, sense: EdgeSense): Standing {
  const window = timerWindow(timer, sense);
  return {
    key: timer.id,
    piece: null,
    timer,
    pot: null,
    part: null,
    rank: 'costs nothing',
    step: null,
    window,
    windows: [window],
    session: null,
    orderAt: orderOf(window, now),
  };
}
