import { sessionMinutes } from '../bench/minutes.ts';
import type { Bench, Session } from '../bench/bench.ts';
import type { Piece } from '../bench/piece.ts';
import { hour, minute, type Instant, type Milliseconds } from '../time/index.ts';
import { expectationOf } from './worked-time.ts';

/** A session that perhaps went on after the work had stopped. */
export type LeftRunning = {
  readonly session: Session;
  /** From when to when no key was pressed; null where it is only long. */
  readonly quiet: { readonly from: Instant; readonly to: Instant } | null;
  /** Where it could be trimmed to; null where nothing tells. Nothing is trimmed by itself. */
  readonly trimTo: Instant | null;
};

const long: Milliseconds = 3 * hour;
/** So many times what its work takes at most is far beyond it, however many keys were pressed meanwhile. */
const farBeyond = 2;
const shortestQuiet: Milliseconds = hour;
/** What is not worth asking for. */
const smallestTrim: Milliseconds = 5 * minute;

/**
 * Looks whether a session was left running: it is longer than three hours or than twice what its work is expected to take
 * at most, or for longer than that once (and at least an hour) no key was pressed, on any piece. A session whose
 * end was corrected once is not doubted again. The trim on offer ends it after the last key before the quiet, with the time to
 * clean up if that was "done"; if there was only the pick-up, after the minutes expected. Without a quiet only "done" tells.
 */
export function leftRunning(
  bench: Bench,
  piece: Piece,
  session: Session,
  now: Instant,
): LeftRunning | null {
  if (session.dropped || session.endCorrected === true) return null;
  const end = session.end ?? now;
  const length = end - session.start;
  if (length < shortestQuiet) return null;
  const work = workOf(bench, piece, session);
  const quiet = longestQuiet(bench, session.start, end);
  const isQuiet = quiet.to - quiet.from > Math.max(shortestQuiet, work.most);
  if (!isQuiet && sessionMinutes(session, now) * minute <= longestOf(work.most)) return null;
  const doneAt = doneIn(piece, session, isQuiet ? quiet.from : end);
  if (!isQuiet) {
    const wanted = doneAt === null ? null : doneAt + work.cleanup;
    return { session, quiet: null, trimTo: worthTrimming(session, end, wanted) };
  }
  const wanted =
    doneAt !== null
      ? Math.max(quiet.from, doneAt) + work.cleanup
      : quiet.from > session.start
        ? quiet.from
        : session.start + work.usual;
  return { session, quiet, trimTo: worthTrimming(session, end, wanted) };
}

/** The whole minute to trim to; null where nothing tells it, or it would leave nothing or cut off too little. */
function worthTrimming(session: Session, end: Instant, wanted: Instant | null): Instant | null {
  if (wanted === null) return null;
  const trimTo = Math.round(wanted / minute) * minute;
  return trimTo > session.start && end - trimTo >= smallestTrim ? trimTo : null;
}

/** How long a session may be before it is doubted for that alone. What nothing is expected of may be long. */
const longestOf = (most: Milliseconds): Milliseconds =>
  most > 0 ? Math.min(long, farBeyond * most) : long;

/** How long a session's work usually takes, and at most, with its setup. */
function workOf(
  bench: Bench,
  piece: Piece,
  session: Session,
): { readonly usual: Milliseconds; readonly most: Milliseconds; readonly cleanup: Milliseconds } {
  const steps = new Set(
    session.targets.filter((target) => target.piece === piece.id).map(({ step }) => step),
  );
  const worked = piece.steps.filter((step) => steps.has(step.id));
  const setup = Math.max(0, ...worked.map((step) => step.setupMinutes));
  const expected = worked.map((step) => expectationOf(bench, piece, step));
  const usual = expected.reduce((sum, { minutes }) => sum + minutes, setup);
  const most = expected.reduce((sum, { high }) => sum + high, setup);
  return { usual: usual * minute, most: most * minute, cleanup: (setup / 2) * minute };
}

/** The longest time between two key presses, wherever they went. */
function longestQuiet(
  bench: Bench,
  start: Instant,
  end: Instant,
): { readonly from: Instant; readonly to: Instant } {
  const keys = new Set([start, end]);
  for (const facts of bench.groups.values()) {
    const told = facts[0]?.told ?? start;
    if (told > start && told < end) keys.add(told);
  }
  const inOrder = [...keys].sort((a, b) => a - b);
  let longest = { from: start, to: start };
  for (const [index, to] of inOrder.entries()) {
    const from = inOrder[index - 1] ?? start;
    if (to - from > longest.to - longest.from) longest = { from, to };
  }
  return longest;
}

/** When the session's work was done, if that was by then. */
function doneIn(piece: Piece, session: Session, by: Instant): Instant | null {
  const done = piece.finishes.filter(
    ({ step, at }) =>
      at >= session.start &&
      at <= by &&
      session.targets.some((target) => target.piece === piece.id && target.step === step),
  );
  return done.length === 0 ? null : Math.max(...done.map(({ at }) => at));
}
