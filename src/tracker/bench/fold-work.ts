import type { Instant } from '../time/index.ts';
import { touch, type BenchInMaking } from './bench-in-making.ts';
import { change, keptFromLearning } from './fold-piece.ts';
import type { BenchFact } from './facts.ts';
import type { Session } from './bench.ts';

/** Folds in what is told about work: sessions, stamps, finishes, checks, odd timers, and their corrections. */
export function foldWorkFact(bench: BenchInMaking, fact: BenchFact): void {
  switch (fact.kind) {
    case 'picked-up':
      setSession(bench, {
        id: fact.body.session,
        startFact: fact.id,
        endFact: null,
        targets: fact.body.targets,
        hand: fact.body.hand,
        start: fact.at,
        end: null,
        first: null,
        dropped: false,
      });
      return;
    case 'put-down':
      return changeSession(bench, fact.body.session, (session) =>
        endedByHand({ ...session, endFact: fact.id }, Math.max(session.start, fact.at)),
      );
    case 'targets-changed':
      return changeSession(bench, fact.body.session, (session) => ({
        ...session,
        targets: fact.body.targets,
        // A hand did this, not a correction: it is as it was recorded.
        first: session.first === null ? null : { ...session.first, targets: fact.body.targets },
      }));
    case 'session-corrected':
      return changeSession(bench, fact.body.session, (session) => ({
        ...session,
        first: session.first ?? {
          start: session.start,
          end: session.end,
          targets: session.targets,
        },
        start: fact.body.start,
        end: fact.body.end,
        ...(fact.body.end === null ? {} : { endCorrected: true as const }),
        targets: fact.body.targets,
        dropped: fact.body.dropped,
      }));
    case 'kept-from-learning': {
      const { session, kept } = fact.body;
      if (session === null) return;
      return changeSession(bench, session, (each) => keptFromLearning(each, kept));
    }
    case 'stamped': {
      const { piece, ...stamp } = fact.body;
      return change(bench, piece, (each) => ({
        ...each,
        stamps: [...each.stamps, { ...stamp, fact: fact.id, at: fact.at }],
      }));
    }
    case 'step-done': {
      const { piece, ...finish } = fact.body;
      return change(bench, piece, (each) => ({
        ...each,
        finishes: [...each.finishes, { ...finish, fact: fact.id, at: fact.at }],
      }));
    }
    case 'checked': {
      const { piece, shown, ...check } = fact.body;
      return change(bench, piece, (each) => ({
        ...each,
        checks: [...each.checks, { ...check, shown: shown ?? null, fact: fact.id, at: fact.at }],
      }));
    }
    case 'coat-weighed': {
      const { piece, ...coat } = fact.body;
      return change(bench, piece, (each) => ({
        ...each,
        coatWeights: [...each.coatWeights, { ...coat, fact: fact.id, at: fact.at }],
      }));
    }
    case 'lateness-explained': {
      const { piece, check, cause } = fact.body;
      return change(bench, piece, (each) => ({
        ...each,
        lateness: [
          ...each.lateness.filter((other) => other.check !== check),
          { check, cause, fact: fact.id, at: fact.at },
        ],
      }));
    }
    case 'moisture-read': {
      const { piece, ...reading } = fact.body;
      return change(bench, piece, (each) => ({
        ...each,
        moisture: [...each.moisture, { ...reading, fact: fact.id, at: fact.at }],
      }));
    }
    case 'timer-started':
      bench.timers.set(fact.body.timer, {
        id: fact.body.timer,
        piece: fact.body.piece,
        label: fact.body.label,
        ms: fact.body.ms,
        start: fact.at,
        closedAt: null,
        fact: fact.id,
      });
      return;
    case 'timer-closed': {
      const timer = bench.timers.get(fact.body.timer);
      if (timer !== undefined) bench.timers.set(timer.id, { ...timer, closedAt: fact.at });
      return;
    }
    case 'stamp-moved':
      return moveStamp(bench, fact.body.fact, fact.body.to, fact.told);
    case 'shop-shut':
      bench.lastShut = { at: fact.at, answers: fact.body.answers };
      return;
    default:
    // Facts about pieces are folded elsewhere; what a step of the clock moves is moved before.
  }
}

function changeSession(bench: BenchInMaking, id: string, how: (session: Session) => Session): void {
  const session = bench.sessions.get(id);
  if (session === undefined) return;
  touchTargets(bench, session);
  setSession(bench, how(session));
}

function setSession(bench: BenchInMaking, session: Session): void {
  bench.sessions.set(session.id, session);
  touchTargets(bench, session);
}

function touchTargets(bench: BenchInMaking, { targets }: Session): void {
  for (const { piece } of targets) touch(bench, piece);
}

/** Gives another instant to whatever that fact put in place. */
function moveStamp(bench: BenchInMaking, moved: string, to: Instant, told: Instant): void {
  const shift = <Entry extends { readonly fact: string; readonly at: Instant }>(
    entries: readonly Entry[],
  ): readonly Entry[] =>
    entries.some((entry) => entry.fact === moved)
      ? entries.map((entry) => (entry.fact === moved ? { ...entry, at: to } : entry))
      : entries;
  for (const piece of bench.pieces.values()) {
    const stamps = shift(piece.stamps);
    const finishes = shift(piece.finishes);
    const checks = shift(piece.checks);
    if (stamps !== piece.stamps || finishes !== piece.finishes || checks !== piece.checks) {
      bench.pieces.set(piece.id, { ...piece, stamps, finishes, checks, movedAt: told });
      touch(bench, piece.id);
    }
  }
  for (const session of bench.sessions.values()) {
    if (session.startFact === moved) {
      setSession(bench, { ...session, start: Math.min(to, session.end ?? to) });
    } else if (session.endFact === moved) {
      setSession(bench, endedByHand(session, Math.max(to, session.start)));
    }
  }
  for (const timer of bench.timers.values()) {
    if (timer.fact === moved) bench.timers.set(timer.id, { ...timer, start: to });
  }
}

/** What was corrected before its end was told, or told otherwise, ends as recorded. */
const endedByHand = (session: Session, end: Instant): Session => ({
  ...session,
  end,
  first:
    session.first === null || session.first.end !== session.end
      ? session.first
      : { ...session.first, end },
});
