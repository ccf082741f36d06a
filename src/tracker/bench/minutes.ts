import { minutesBetween, type Instant } from '../time/index.ts';
import type { Bench, Session } from './bench.ts';
import type { Piece } from './piece.ts';

/** How long a session was, in minutes; one still in hand is counted up to `now`. */
export const sessionMinutes = (session: Session, now: Instant): number =>
  session.dropped ? 0 : minutesBetween(session.start, session.end ?? now);

/** A session's minutes on one piece: shared out by size where several pieces were worked together. */
export function minutesOn(session: Session, piece: Piece, bench: Bench, now: Instant): number {
  const own = session.targets.filter((target) => target.piece === piece.id).length;
  if (own === 0) return 0;
  if (session.targets.length === own) return sessionMinutes(session, now);
  const sizeOf = sizesOf(session, bench);
  const all = session.targets.reduce((sum, target) => sum + sizeOf(target.piece), 0);
  return (sessionMinutes(session, now) * own * sizeOf(piece.id)) / all;
}

/** A piece whose size was not told has an equal share: it counts as the mean of those that were told. */
function sizesOf({ targets }: Session, bench: Bench): (piece: string) => number {
  const areas = [...new Set(targets.map(({ piece }) => piece))].flatMap(
    (piece) => bench.pieces.get(piece)?.areaM2 ?? [],
  );
  const mean = areas.length === 0 ? 1 : areas.reduce((sum, area) => sum + area, 0) / areas.length;
  return (piece) => bench.pieces.get(piece)?.areaM2 ?? mean;
}

/** Minutes recorded on one step of a piece, `null` for work that belongs to no step. */
export function stepMinutes(bench: Bench, piece: Piece, step: string | null, now: Instant): number {
  return bench.sessions
    .filter((session) =>
      session.targets.some((target) => target.piece === piece.id && target.step === step),
    )
    .reduce(
      (sum, session) => sum + minutesOn(session, piece, bench, now) * shareOf(session, piece, step),
      0,
    );
}

/** Several steps of one piece in one session share its minutes evenly. */
function shareOf(session: Session, piece: Piece, step: string | null): number {
  const own = session.targets.filter((target) => target.piece === piece.id);
  return own.filter((target) => target.step === step).length / own.length;
}

/** All minutes recorded on a piece. */
export const pieceMinutes = (bench: Bench, piece: Piece, now: Instant): number =>
  bench.sessions.reduce((sum, session) => sum + minutesOn(session, piece, bench, now), 0);

/** The sessions that a piece has a share in, first first. */
export const sessionsOf = (bench: Bench, piece: string): readonly Session[] =>
  bench.sessions.filter(
    (session) => !session.dropped && session.targets.some((target) => target.piece === piece),
  );
