import { minutesBetween, type Instant } from '../time/index.ts';
import type { BenchFact } from './facts.ts';
import type { Bench, Session } from './bench.ts';

/** How a session differs from what was first recorded. */
export type CardCorrection = {
  readonly session: string;
  readonly change: 'changed' | 'dropped' | 'moved here' | 'moved away';
  /** The step it is told under: the one it was recorded for, or is now. */
  readonly step: string | null;
  /** When it was last corrected, where that is known. */
  readonly told: Instant | null;
  readonly start: Instant;
  /** Minutes as first recorded; null where it was still in hand. */
  readonly was: number | null;
  readonly minutes: number;
  /** The piece it came from or went to. */
  readonly other: string | null;
};

/** All facts that stand, as far as they were made by hand: what was taken back is left out. */
export const standingFacts = (bench: Bench): readonly BenchFact[] =>
  bench.trail.done.flatMap((group) => bench.groups.get(group) ?? []);

/** Corrections of all sessions that are, or were first, on a piece. One that only confirmed a session is none. */
export function correctionsOf(
  bench: Bench,
  piece: string,
  facts: readonly BenchFact[],
  now: Instant,
): readonly CardCorrection[] {
  return bench.sessions.flatMap((session): CardCorrection[] => {
    const { first } = session;
    if (first === null) return [];
    const wasHere = stepOn(first.targets, piece);
    const isHere = stepOn(session.targets, piece);
    const change = changeOf(session, wasHere !== undefined, isHere !== undefined);
    if (change === null) return [];
    const elsewhere = (change === 'moved here' ? first : session).targets[0]?.piece;
    return [
      {
        session: session.id,
        change,
        step: (change === 'moved here' ? isHere : (wasHere ?? isHere)) ?? null,
        told: lastTold(facts, session.id),
        start: first.start,
        was: first.end === null ? null : minutesBetween(first.start, first.end),
        minutes: session.dropped ? 0 : minutesBetween(session.start, session.end ?? now),
        other: change.startsWith('moved') ? nameOf(bench, elsewhere) : null,
      },
    ];
  });
}

/** Undefined where the session is not on the piece; null for work that belongs to no step. */
const stepOn = (targets: Session['targets'], piece: string): string | null | undefined =>
  targets.find((target) => target.piece === piece)?.step;

function changeOf(
  session: Session,
  wasHere: boolean,
  isHere: boolean,
): CardCorrection['change'] | null {
  const { first } = session;
  if (first === null || (!wasHere && !isHere)) return null;
  if (session.dropped) return 'dropped';
  if (!wasHere) return 'moved here';
  if (!isHere) return 'moved away';
  const isSameWork = JSON.stringify(first.targets) === JSON.stringify(session.targets);
  const isSame = first.start === session.start && first.end === session.end && isSameWork;
  return isSame ? null : 'changed';
}

const nameOf = (bench: Bench, piece: string | undefined): string | null =>
  piece === undefined ? null : (bench.pieces.get(piece)?.name ?? null);

const lastTold = (facts: readonly BenchFact[], session: string): Instant | null =>
  facts.findLast((fact) => fact.kind === 'session-corrected' && fact.body.session === session)
    ?.told ?? null;
