import type { Piece } from '../bench/piece.ts';
import type { ClassLean, ComparedStep, FinishedHours, Held, Lean } from '../estimate/index.ts';
import type { Instant } from '../time/index.ts';
import { bySchedule, type ScheduleLean } from './by-schedule.ts';
import { costliest, type CostlyClass } from './costliest.ts';
import { overTime, type OverTime, type TimeLean } from './over-time.ts';
import { pieceOutcomes, type PieceOutcome } from './piece-outcomes.ts';
import { whereHoursWent, type WhereHoursWent } from './where-hours-went.ts';

/** As much of a piece as a review names it by. */
export type NamedPiece = Pick<Piece, 'id' | 'number' | 'name'>;

/** A step that was off its estimate, far enough to be told. */
export type StepOff = {
  readonly piece: NamedPiece;
  readonly step: { readonly name: string };
  readonly expected: { readonly minutes: number };
  readonly minutes: number;
  readonly note: { readonly text: string } | null;
};

/** How a kind of work went, with only the steps that were furthest off. */
type Brief<Of extends Lean> = Omit<Of, 'steps'> & { readonly steps: readonly StepOff[] };
export type BriefLean = Brief<Lean>;

/** Past ranges and what then happened, of named pieces. */
export type BriefOutcome = Omit<PieceOutcome, 'piece'> & { readonly piece: NamedPiece };

/**
 * Finished pieces looked over in every way that the screens show. It holds nothing of the pieces but their names, so that
 * ten years of them can be handed from one thread to another between two frames.
 */
export type Review = {
  readonly pieces: number;
  /** Of these, from hours that were kept elsewhere. */
  readonly imported: number;
  readonly since: Instant | null;
  readonly until: Instant | null;
  readonly whole: BriefLean;
  readonly classes: readonly Brief<ClassLean>[];
  readonly held: Held;
  readonly schedules: readonly Brief<ScheduleLean>[];
  readonly time: Omit<OverTime, 'last' | 'months'> & {
    readonly last: (BriefLean & { readonly count: number }) | null;
    readonly months: readonly Brief<TimeLean>[];
  };
  readonly outcomes: { readonly pieces: readonly BriefOutcome[]; readonly held: Held };
  readonly went: WhereHoursWent;
  readonly costliest: readonly (Omit<CostlyClass, 'mostly'> & {
    readonly mostly: NamedPiece | null;
  })[];
};

/** So many steps a row are kept: no terminal shows more below a table. */
const mostSteps = 8;
/** Minutes off the estimate below which nobody asks why. */
const worthTelling = 5;

/** @param monthOf the month of an instant in the shop's zone, as `2026-11` */
export function reviewOf(finished: FinishedHours, monthOf: (at: Instant) => string): Review {
  const { pieces, since, until, whole, classes, held } = finished;
  const { last, months, trend } = overTime(finished, monthOf);
  const outcomes = pieceOutcomes(finished);
  return {
    pieces: pieces.length,
    imported: pieces.filter(({ imported }) => imported === true).length,
    since,
    until,
    whole: brief(whole),
    classes: classes.map(brief),
    held,
    schedules: bySchedule(finished).map(brief),
    time: { last: last === null ? null : brief(last), months: months.map(brief), trend },
    outcomes: {
      ...outcomes,
      pieces: outcomes.pieces.map((each) => ({ ...each, piece: named(each.piece) })),
    },
    went: whereHoursWent(finished),
    costliest: costliest(finished).map((each) => ({
      ...each,
      mostly: each.mostly === null ? null : named(each.mostly),
    })),
  };
}

const brief = <Of extends Lean>(lean: Of): Brief<Of> => ({
  ...lean,
  steps: lean.steps
    .filter(({ minutes, expected }) => Math.abs(minutes - expected.minutes) >= worthTelling)
    .slice(0, mostSteps)
    .map(stepOff),
});

const named = ({ id, number, name }: Piece): NamedPiece => ({ id, number, name });

const stepOff = ({ piece, step, expected, minutes, note }: ComparedStep): StepOff => ({
  piece: named(piece),
  step: { name: step.name },
  expected: { minutes: expected.minutes },
  minutes,
  note: note === null ? null : { text: note.text },
});
