import type { Expectation } from '../bench/facts.ts';
import { sessionMinutes, stepMinutes } from '../bench/minutes.ts';
import type { Bench, Session } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { countsFor } from '../bench/progress.ts';
import { minutesBetween, type Instant } from '../time/index.ts';
import { foreseenOn, expectedMinutes } from './expected.ts';

/** What was expected of a step: what was stored when it was finished; before that, what is expected now. */
export const expectationOf = (
  bench: Pick<Bench, 'estimator'>,
  piece: Piece,
  step: PlannedStep,
): Expectation =>
  piece.finishes.find((finish) => finish.step === step.id)?.expectation ??
  foreseenOn(bench, step, piece);

/** Minutes of one session, or of all sessions on a step. */
export type WorkedTime = {
  /** Pick-up to put-down. */
  readonly recorded: number;
  /** Of these, setup and cleanup. */
  readonly setup: number;
  /** Where no stamp told setup or cleanup apart, the schedule's share was taken. */
  readonly about: boolean;
};

/** Sessions by the piece they are for, so that one piece's needn't be looked for among ten years'. */
export type SessionsByPiece = ReadonlyMap<string, readonly Session[]>;

/**
 * The sessions of each piece that were not dropped, in the order of picking up; once for all pieces, as each alone
 * would go through all.
 */
export function sessionsByPiece(bench: Bench): SessionsByPiece {
  const byPiece = new Map<string, Session[]>();
  for (const session of bench.sessions) {
    if (session.dropped) continue;
    for (const id of new Set(session.targets.map((target) => target.piece))) {
      const known = byPiece.get(id);
      if (known === undefined) byPiece.set(id, [session]);
      else known.push(session);
    }
  }
  return byPiece;
}

/**
 * Setup is paid once a session, however many pieces share it; hands-on time is what remains. `setups`: how many setups fall
 * to the step, each session's shared as its minutes are. One of the sessions may be left uncounted.
 */
export function workedOnStep(
  bench: Bench,
  piece: Piece,
  step: string,
  sessions: SessionsByPiece,
  now: Instant,
  besides: Session | null = null,
): WorkedTime & { readonly sessions: number; readonly setups: number } {
  let recorded = 0;
  let setup = 0;
  let isAbout = false;
  let count = 0;
  let setups = 0;
  for (const session of sessions.get(piece.id) ?? []) {
    if (!session.targets.some((target) => target.piece === piece.id && target.step === step))
      continue;
    if (session.id === besides?.id) continue;
    const own = stepMinutes({ ...bench, sessions: [session] }, piece, step, now);
    const whole = splitSession(bench, session, sessions, now);
    recorded += own;
    if (whole.recorded > 0) setup += (whole.setup * own) / whole.recorded;
    isAbout ||= whole.about;
    count += 1;
    setups += whole.recorded > 0 ? own / whole.recorded : 1 / session.targets.length;
  }
  return { recorded, setup: Math.min(setup, recorded), about: isAbout, sessions: count, setups };
}

const keptByPiece = new WeakMap<readonly Session[], SessionsByPiece>();

/**
 * Minutes that hands were on a step, without setup and cleanup: what can be held against its estimate.
 * @param besides a session that is not counted: the one in hand, to tell what was done before it
 */
export function handsOnMinutes(
  bench: Bench,
  piece: Piece,
  step: string,
  now: Instant,
  besides: Session | null = null,
): number {
  const sessions = keptByPiece.get(bench.sessions) ?? sessionsByPiece(bench);
  keptByPiece.set(bench.sessions, sessions);
  const { recorded, setup } = workedOnStep(bench, piece, step, sessions, now, besides);
  return recorded - setup;
}

type Work = { readonly piece: Piece; readonly step: PlannedStep; readonly part: string | null };

/**
 * Tells setup and cleanup of one session from the work itself: from pick-up to the first stroke, and from the last
 * finish to the put-down. Where a stamp is missing, half the schedule's share of the session is taken for that end, and at
 * most half of the schedule's setup: a session of a step that is expected to take 45 minutes with 15 of setup is one
 * quarter setup if it is short, 15 minutes if it is long.
 */
function splitSession(
  bench: Bench,
  session: Session,
  sessions: SessionsByPiece,
  now: Instant,
): WorkedTime {
  const recorded = sessionMinutes(session, now);
  const works = session.targets.flatMap((target): Work[] => {
    const piece = bench.pieces.get(target.piece);
    const step = piece?.steps.find((each) => each.id === target.step);
    return piece === undefined || step === undefined ? [] : [{ piece, step, part: target.part }];
  });
  const scheduled = Math.max(0, ...works.map(({ step }) => step.setupMinutes));
  // What takes longer than expected, or more sessions, is the work: setting up and cleaning is the same each time.
  const half = Math.min(recorded * setupShare(works, scheduled, sessions), scheduled) / 2;
  const before = strokeAfter(session, works, now);
  const after = session.end === null ? 0 : restAfterDone(session, works, session.end);
  return {
    recorded,
    setup: Math.min(recorded, (before ?? half) + (after ?? half)),
    about: half > 0 && (before === null || after === null),
  };
}

/** The part of a session that the schedule expects to be setup, 0..1. */
function setupShare(works: readonly Work[], setup: number, sessions: SessionsByPiece): number {
  const hands = works.reduce((sum, { piece, step }) => {
    const all = (sessions.get(piece.id) ?? []).filter(({ targets }) =>
      targets.some((target) => target.piece === piece.id && target.step === step.id),
    );
    // By the schedule: what was learned is learned from this.
    return sum + expectedMinutes(step, piece).minutes / Math.max(1, all.length);
  }, 0);
  return setup > 0 ? setup / (setup + Math.max(0, hands)) : 0;
}

/** Minutes from pick-up to the first stroke put on in the session; null where none was. */
function strokeAfter(session: Session, works: readonly Work[], now: Instant): number | null {
  const end = session.end ?? now;
  const strokes = works.flatMap(({ piece, step, part }) =>
    piece.stamps
      .filter(
        ({ event, step: stamped, part: stampedPart, at }) =>
          (event === 'first-stroke' || event === 'section-on') &&
          stamped === step.id &&
          touches(stampedPart, part) &&
          at >= session.start &&
          at <= end,
      )
      .map(({ at }) => at),
  );
  return strokes.length === 0 ? null : minutesBetween(session.start, Math.min(...strokes));
}

/** Minutes from the last finish to the put-down; null unless all that was worked was finished in the session. */
function restAfterDone(session: Session, works: readonly Work[], end: Instant): number | null {
  const finished = works.map(({ piece, step, part }) =>
    piece.finishes.findLast(
      (finish) =>
        finish.step === step.id &&
        touches(finish.part, part) &&
        finish.at >= session.start &&
        finish.at <= end,
    ),
  );
  const last = Math.max(...finished.map((finish) => finish?.at ?? Number.POSITIVE_INFINITY));
  return Number.isFinite(last) ? minutesBetween(last, end) : null;
}

const touches = (a: string | null, b: string | null): boolean => countsFor(a, b) || b === null;
