import type { Instant, Milliseconds } from '../time/index.ts';
import { opensAt, stateAt } from '../windows/evaluate.ts';
import type { EdgeSense, Milestone, Window } from '../windows/model.ts';
import type { LateCause } from '../trade/late-causes.ts';
import type { BenchFact, Finding, MoistureSpot } from './facts.ts';
import { correctionsOf, standingFacts } from './job-card-corrections.ts';
import { holdRows, planRow, stepName, type HoldRow, type PlanRow } from './job-card-events.ts';
import { partName } from './job-card-outcomes.ts';
import { movedFrom, stepRows, type StepRow } from './job-card-steps.ts';
import { matchFindings, type MatchFinding } from './matches/index.ts';
import { pieceMinutes, sessionsOf } from './minutes.ts';
import type { Bench, OddTimer } from './bench.ts';
import type { Air, Check, MoistureReading, Piece } from './piece.ts';
import { windowsOf } from './piece-windows.ts';
import { countsFor, isDone } from './progress.ts';

export type { HoldRow, PlanRow } from './job-card-events.ts';
export type { CardCorrection } from './job-card-corrections.ts';
export type { CardOutcome } from './job-card-outcomes.ts';
export type { CardStamp, StepRow } from './job-card-steps.ts';

export type CheckRow = {
  readonly row: 'check';
  readonly at: Instant;
  readonly step: string | null;
  readonly part: string | null;
  readonly finding: Finding;
  readonly shown: string | null;
  /** Why it came so late, where that was told. */
  readonly why: LateCause | null;
  readonly air: Air | null;
  /** Since the last stroke of what was tried; null where there was none. */
  readonly afterStroke: Milliseconds | null;
  readonly movedFrom: Instant | null;
};

export type MoistureRow = {
  readonly row: 'moisture';
  readonly at: Instant;
  readonly step: string | null;
  readonly part: string | null;
  readonly spot: MoistureSpot;
  readonly percent: number;
  readonly air: Air | null;
};

export type NoteRow = {
  readonly row: 'note';
  readonly at: Instant;
  readonly step: string | null;
  readonly text: string;
};

export type TimerRow = { readonly row: 'timer'; readonly at: Instant; readonly timer: OddTimer };

export type JobCardRow = StepRow | CheckRow | MoistureRow | NoteRow | HoldRow | PlanRow | TimerRow;

export type JobCard = {
  readonly piece: Piece;
  /** Everything that was done to it and put on it, first first. */
  readonly rows: readonly JobCardRow[];
  /** Steps that are neither done nor skipped; `notBefore` where a window they wait for is still to open. */
  readonly toDo: readonly { readonly name: string; readonly notBefore: Instant | null }[];
  /** Milestones that no step waits for and that are still to come. */
  readonly curing: readonly { readonly milestone: Milestone; readonly at: Instant }[];
  /** Pieces that it should match, and in what they differ. */
  readonly matches: readonly MatchFinding[];
  readonly minutes: number;
  readonly sessions: number;
};

/** A piece's whole record. Instants are those after corrections; what was first told stands beside them. */
export function jobCard(whole: Bench, piece: Piece, now: Instant, sense: EdgeSense): JobCard {
  const bench = sessionsAbout(whole, piece.id);
  const facts = standingFacts(whole).filter(
    ({ body }) => 'session' in body || ('piece' in body && body.piece === piece.id),
  );
  const windows = windowsOf(bench, piece, sense);
  const corrections = correctionsOf(bench, piece.id, facts, now);
  const rows: readonly JobCardRow[] = [
    ...stepRows({ bench, piece, now, windows, corrections, facts }),
    ...piece.checks.map((check) => checkRow(piece, check, facts)),
    ...piece.moisture.map((reading) => moistureRow(piece, reading)),
    ...piece.notes.map((note): NoteRow => ({
      row: 'note',
      at: note.at,
      step: stepName(piece, note.step),
      text: note.text,
    })),
    ...holdRows(piece, facts),
    ...facts.flatMap((fact) => planRow(piece, fact)),
    ...bench.timers
      .filter((timer) => timer.piece === piece.id)
      .map((timer): TimerRow => ({ row: 'timer', at: timer.start, timer })),
  ];
  return {
    piece,
    rows: rows.toSorted((a, b) => a.at - b.at),
    toDo: stepsToDo(piece, windows, now),
    curing: curingOf(piece, windows, now),
    matches: matchFindings(whole, piece, sense),
    minutes: pieceMinutes(bench, piece, now),
    sessions: sessionsOf(bench, piece.id).length,
  };
}

/** The bench with only those sessions that are, or were first, on the piece: the others would be looked through row by row. */
const sessionsAbout = (bench: Bench, piece: string): Bench => ({
  ...bench,
  sessions: bench.sessions.filter(({ targets, first }) =>
    [...targets, ...(first?.targets ?? [])].some((target) => target.piece === piece),
  ),
});

function checkRow(piece: Piece, check: Check, facts: readonly BenchFact[]): CheckRow {
  const strokes = [
    ...piece.stamps.filter(({ event }) => event === 'last-stroke'),
    ...piece.finishes,
  ].filter(
    ({ step, part, at }) => step === check.step && countsFor(part, check.part) && at <= check.at,
  );
  return {
    row: 'check',
    at: check.at,
    step: stepName(piece, check.step),
    part: partName(piece, check.part),
    finding: check.finding,
    shown: check.shown,
    why: piece.lateness.find((each) => each.check === check.fact)?.cause ?? null,
    air: check.air,
    afterStroke: strokes.length === 0 ? null : check.at - Math.max(...strokes.map(({ at }) => at)),
    movedFrom: movedFrom(facts, check.fact, check.at),
  };
}

const moistureRow = (piece: Piece, reading: MoistureReading): MoistureRow => ({
  row: 'moisture',
  at: reading.at,
  step: stepName(piece, reading.step),
  part: partName(piece, reading.part),
  spot: reading.spot,
  percent: reading.percent,
  air: reading.air,
});

const isLive = (window: Window, now: Instant): boolean => stateAt(window, now) !== 'done';

function stepsToDo(piece: Piece, windows: readonly Window[], now: Instant): JobCard['toDo'] {
  return piece.steps
    .filter((step) => !step.skipped && !isDone(piece, step.id, null))
    .map((step) => {
      const waits = windows
        .filter(
          (window) =>
            isLive(window, now) &&
            window.subject.stepId !== step.id &&
            window.rule.milestone !== undefined &&
            step.needs.includes(window.rule.milestone),
        )
        .flatMap((window) => opensAt(window) ?? []);
      const latest = Math.max(now, ...waits);
      return { name: step.name, notBefore: latest > now ? latest : null };
    });
}

/** The last opening of each milestone that nothing on the list needs any more. */
function curingOf(piece: Piece, windows: readonly Window[], now: Instant): JobCard['curing'] {
  const needed = new Set(
    piece.steps
      .filter((step) => !step.skipped && !isDone(piece, step.id, null))
      .flatMap(({ needs }) => needs),
  );
  const latest = new Map<Milestone, Instant>();
  for (const window of windows) {
    const { milestone, kind } = window.rule;
    const opens = opensAt(window);
    if (kind !== 'cure' || milestone === undefined || needed.has(milestone)) continue;
    if (opens === null || opens <= now || !isLive(window, now)) continue;
    latest.set(milestone, Math.max(opens, latest.get(milestone) ?? 0));
  }
  return [...latest].map(([milestone, at]) => ({ milestone, at })).sort((a, b) => a.at - b.at);
}
