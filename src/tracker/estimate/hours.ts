import type { Expectation } from '../bench/facts.ts';
import { pieceMinutes } from '../bench/minutes.ts';
import type { Bench } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { isDone } from '../bench/progress.ts';
import type { Instant } from '../time/index.ts';
import type { StepClass } from '../trade/schedule.ts';
import { rangeOfSum, totalOn } from './range-of-sum.ts';
import {
  expectationOf,
  sessionsByPiece,
  workedOnStep,
  type SessionsByPiece,
} from './worked-time.ts';

/** Where the minutes came to lie; null where nothing can be said yet, or no minutes were recorded. */
export type Verdict = 'inside' | 'over' | 'under' | null;

/** One step of a piece. All figures are minutes. */
export type StepHours = {
  readonly step: PlannedStep;
  readonly state: 'done' | 'begun' | 'to do' | 'skipped';
  readonly expected: Expectation;
  /** Hands-on minutes, without setup and cleanup; null where none were recorded. */
  readonly minutes: number | null;
  /** Setup was taken off by the schedule's share. */
  readonly about: boolean;
  readonly setup: number;
  readonly sessions: number;
  /** Setups that fall to it: a session shared with other pieces pays its one setup together. */
  readonly setups: number;
  readonly verdict: Verdict;
};

/** Steps of one class on a piece: those that are done, or before any is, all that are planned. */
export type ClassHours = {
  readonly stepClass: StepClass;
  readonly steps: readonly StepHours[];
  /** How many of the steps are done. */
  readonly done: number;
  readonly expected: Expectation;
  readonly minutes: number | null;
  readonly about: boolean;
  readonly verdict: Verdict;
};

export type PieceHours = {
  readonly piece: Piece;
  readonly steps: readonly StepHours[];
  readonly classes: readonly ClassHours[];
  /** All steps that are done and have minutes; null before the first. */
  readonly done: {
    readonly expected: Expectation;
    readonly minutes: number;
    readonly verdict: Verdict;
  } | null;
  /** What is still to do, less what was spent on steps that are begun; null when nothing is. */
  readonly toGo: Expectation | null;
  /** Setup and cleanup: paid once a session, whatever the size. `expected` is the schedule's figure for these sessions. */
  readonly setup: {
    readonly minutes: number;
    readonly expected: number;
    readonly about: boolean;
  };
  /** Hands-on minutes on steps that are begun and not done. */
  readonly begun: number;
  /** As many of these as `toGo` has less for them: what a step took beyond its estimate is not saved elsewhere. */
  readonly countedOff: number;
  /** Minutes of work that belongs to no step. */
  readonly other: number;
  /** Everything recorded on the piece, and in how many sessions. */
  readonly recorded: number;
  readonly sessions: number;
  /** From a file of hours that were kept elsewhere: estimates without ranges, no sessions. */
  readonly imported?: true;
};

/** Actual against estimated minutes of one piece, step by step and folded by step class. */
export const hoursOfPiece = (bench: Bench, piece: Piece, now: Instant): PieceHours =>
  hoursWith(bench, piece, sessionsByPiece(bench), now);

/** The same where the sessions are sorted by piece already. */
export function hoursWith(
  bench: Bench,
  piece: Piece,
  sessions: SessionsByPiece,
  now: Instant,
): PieceHours {
  const own = sessions.get(piece.id) ?? [];
  const ownBench: Bench = { ...bench, sessions: own };
  const steps = piece.steps.map((step) => hoursOfStep(ownBench, piece, step, sessions, now));
  const shown = steps.filter(({ state, minutes }) => state !== 'skipped' || minutes !== null);
  const compared = shown.filter(isCompared);
  const recorded = pieceMinutes(ownBench, piece, now);
  const setup = sum(shown.map((each) => each.setup));
  const open = shown.filter(({ state }) => state === 'to do' || state === 'begun');
  const countedOff = sum(
    open.map(({ minutes, expected }) => Math.min(minutes ?? 0, expected.minutes)),
  );
  const hands = sum(shown.map(({ minutes }) => minutes ?? 0));
  return {
    piece,
    steps: shown,
    classes: foldByClass(shown),
    done: totalOf(compared),
    toGo: stillToGo(bench, piece, open, countedOff),
    setup: {
      minutes: setup,
      expected: sum(shown.map(({ step, setups }) => step.setupMinutes * setups)),
      about: shown.some(({ about }) => about),
    },
    begun: sum(shown.map(({ state, minutes }) => (state === 'done' ? 0 : (minutes ?? 0)))),
    countedOff,
    other: wholeOrNothing(recorded - hands - setup),
    recorded,
    sessions: own.length,
  };
}

function hoursOfStep(
  bench: Bench,
  piece: Piece,
  step: PlannedStep,
  sessions: SessionsByPiece,
  now: Instant,
): StepHours {
  const {
    recorded,
    setup,
    about,
    sessions: count,
    setups,
  } = workedOnStep(bench, piece, step.id, sessions, now);
  const minutes = recorded > 0 ? recorded - setup : null;
  const isFinished = isDone(piece, step.id, null);
  const isTouched =
    minutes !== null ||
    [...piece.stamps, ...piece.finishes].some((record) => record.step === step.id);
  const state = isFinished ? 'done' : step.skipped ? 'skipped' : isTouched ? 'begun' : 'to do';
  const expected = expectationOf(bench, piece, step);
  const verdict = isFinished && minutes !== null ? verdictOn(minutes, expected) : null;
  return { step, state, expected, minutes, about, setup, sessions: count, setups, verdict };
}

/** Steps that can be held against their estimate: done, and with minutes recorded. */
export const isCompared = (
  hours: StepHours,
): hours is StepHours & { readonly minutes: number; readonly state: 'done' } =>
  hours.state === 'done' && hours.minutes !== null;

/** Compared in whole minutes, as they are told: 20 min are inside a range told as 12 to 20. */
export function verdictOn(minutes: number, { low, high }: Expectation): Verdict {
  const told = Math.round(minutes);
  if (told > Math.round(high)) return 'over';
  return told < Math.round(low) ? 'under' : 'inside';
}

function foldByClass(steps: readonly StepHours[]): readonly ClassHours[] {
  const classes = Map.groupBy(steps, ({ step }) => step.stepClass);
  return [...classes].flatMap(([stepClass, own]): ClassHours[] => {
    const compared = own.filter(isCompared);
    const counted = compared.length > 0 ? compared : own;
    const expected = rangeOfSum(counted.map((each) => each.expected));
    if (expected === null) return [];
    const timed = counted.flatMap(({ minutes }) => (minutes === null ? [] : [minutes]));
    return [
      {
        stepClass,
        steps: own,
        done: own.filter(({ state }) => state === 'done').length,
        expected,
        minutes: timed.length === 0 ? null : sum(timed),
        about: counted.some(({ about }) => about),
        verdict: compared.length === 0 ? null : verdictOn(sum(timed), expected),
      },
    ];
  });
}

function totalOf(
  compared: readonly (StepHours & { readonly minutes: number })[],
): PieceHours['done'] {
  const expected = rangeOfSum(compared.map((each) => each.expected));
  if (expected === null) return null;
  const minutes = sum(compared.map((each) => each.minutes));
  return { expected, minutes, verdict: verdictOn(minutes, expected) };
}

function stillToGo(
  bench: Bench,
  piece: Piece,
  open: readonly StepHours[],
  spent: number,
): Expectation | null {
  const whole = totalOn(
    bench,
    open.map(({ step }) => step),
    piece,
  );
  if (whole === null) return null;
  const left = (minutes: number): number => Math.max(0, minutes - spent);
  return {
    ...whole,
    minutes: left(whole.minutes),
    low: left(whole.low),
    high: left(whole.high),
  };
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

/** What is left of a subtraction that should have left nothing. */
const wholeOrNothing = (minutes: number): number => (minutes < 1e-6 ? 0 : minutes);
