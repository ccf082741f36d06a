import type { Instant } from '../time/index.ts';
import { closesAt, opensAt, stateAt, stretchAfter, stretchAt } from '../windows/evaluate.ts';
import type { EdgeSense, Loss, Window } from '../windows/model.ts';
import type { Bench, OddTimer, Piece, PlannedStep, Pot, Session } from './piece.ts';
import { awaitedWindowsOf, windowsOf } from './piece-windows.ts';
import { countsFor, currentStep, isDone } from './progress.ts';
import { openPots, windowsOfPot } from './pot-window.ts';
import { stepUnderWay } from './step-under-way.ts';
import { timerWindow } from './timer-window.ts';

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
  if (window !== null && window.rule.kind === 'cure' && stateAt(window, now) === 'before') {
    return { ...base, window, rank: 'curing', orderAt: opensAt(window) ?? now };
  }
  const matters =
    window !== null &&
    (byCurrentStep || window.rule.milestone === undefined || costsSoon(window, now));
  if (window === null || !matters) {
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
    return { wanted: [...own, ...lastToOpen(cures)], byCurrentStep: true };
  }
  const undone = piece.steps.filter((each) => !each.skipped && !isDone(piece, each.id, part));
  for (const waiting of undone) {
    const needed = live.filter(
      ({ rule, subject }) =>
        rule.milestone !== undefined &&
        waiting.needs.includes(rule.milestone) &&
        subject.stepId !== waiting.id,
    );
    if (needed.length > 0) return { wanted: [...own, ...needed], byCurrentStep: waiting === step };
  }
  return { wanted: own, byCurrentStep: true };
}

const lastToOpen = (windows: readonly Window[]): readonly Window[] => {
  const last = windows.reduce<Window | null>(
    (latest, window) =>
      latest === null || (opensAt(window) ?? 0) > (opensAt(latest) ?? 0) ? window : latest,
    null,
  );
  return last === null ? [] : [last];
};

/** What is lost next if nothing is done: the loss of the stretch in force when late, else of the one after "go". */
export function nextLoss(window: Window, now: Instant): Loss {
  const stretch = stretchAt(window, now);
  if (stretch.meaning === 'late') return stretch.loss;
  const closing = closesAt(window, now);
  if (closing === null) return 'costs nothing';
  // A forbidden gap costs the wait even where the label puts no work on it.
  if (closing.next.meaning === 'keep off' && closing.next.loss === 'costs nothing')
    return 'costs work';
  return closing.next.loss;
}

const losesSurface = (window: Window, now: Instant): boolean => nextLoss(window, now) === 'spoils';

const costsSoon = (window: Window, now: Instant): boolean =>
  stretchAt(window, now).meaning === 'go' && nextLoss(window, now) !== 'costs nothing';

/** When it is lost; for what is lost already, when it was. */
const losingAt = (window: Window, now: Instant): Instant =>
  stretchAt(window, now).meaning === 'late'
    ? stretchAt(window, now).begins
    : (closesAt(window, now)?.at ?? now);

function rankOf(window: Window, now: Instant): Rank {
  switch (stretchAt(window, now).meaning) {
    case 'keep off':
      return 'keep off';
    case 'go':
      return nextLoss(window, now) === 'costs nothing' ? 'costs nothing' : 'costs work';
    case 'wait':
    case 'go after work':
    case 'late':
      return 'costs nothing';
  }
}

function orderOf(window: Window, now: Instant): Instant {
  const rank = rankOf(window, now);
  if (rank === 'costs work') return closesAt(window, now)?.at ?? now;
  if (rank === 'keep off') return stretchAfter(window, now)?.begins ?? Number.MAX_SAFE_INTEGER;
  return opensAt(window) ?? Number.MAX_SAFE_INTEGER;
}

/**
 * What would be lost first. Then what its own step has to follow up, the next pass or the clamps, soonest first; then of
 * milestones what is still to open last, since a step waits for all of them; then what closes first. Last a milestone
 * whose last stroke is not made: while a stripper works, or a filler hazes, its drying tells nothing yet.
 */
function foremost(windows: readonly Window[], now: Instant): Window | null {
  const weight = (window: Window): readonly [number, number] => {
    if (losesSurface(window, now)) return [0, losingAt(window, now)];
    const { meaning } = stretchAt(window, now);
    const isMilestone = window.rule.milestone !== undefined;
    if (meaning === 'go' && costsSoon(window, now) && !isMilestone)
      return [1, losingAt(window, now)];
    const opens = orderOf(window, now);
    if (meaning === 'keep off' || meaning === 'wait') {
      if (!isMilestone) return [2, opens];
      const isPending = meaning === 'wait' && stretchAfter(window, now) === null;
      return isPending ? [5, 0] : [3, -opens];
    }
    return [4, losingAt(window, now)];
  };
  return windows.reduce<Window | null>((best, window) => {
    if (best === null) return window;
    const [a, b] = [weight(window), weight(best)];
    return a[0] < b[0] || (a[0] === b[0] && a[1] < b[1]) ? window : best;
  }, null);
}

/** When something was last put on a piece, finished or tried. */
export const lastTouched = (piece: Piece): Instant =>
  Math.max(
    piece.addedAt,
    ...piece.stamps.map((stamp) => stamp.at),
    ...piece.finishes.map((finish) => finish.at),
    ...piece.checks.map((check) => check.at),
  );

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
