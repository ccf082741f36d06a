import type { Instant } from '../time/index.ts';
import type { StampEvent, Window } from '../windows/model.ts';
import { coatWeightsOn } from './coat-weight.ts';
import type { BenchFact, CoatWeight } from './facts.ts';
import type { CardCorrection } from './job-card-corrections.ts';
import { outcomeOf, partName, type CardOutcome } from './job-card-outcomes.ts';
import { sessionsOf, stepMinutes } from './minutes.ts';
import type { Bench } from './bench.ts';
import type { Air, Piece, PlannedStep } from './piece.ts';

/** A stamp or a finish as the card tells it. */
export type CardStamp = {
  readonly event: StampEvent | 'done';
  readonly agent: string | null;
  readonly pass: number;
  readonly section: number | null;
  /** Name of the part, null for the whole piece. */
  readonly part: string | null;
  readonly at: Instant;
  /** Where it was first recorded, if it was moved since. */
  readonly movedFrom: Instant | null;
};

export type StepRow = {
  readonly row: 'step';
  readonly at: Instant;
  /** Null for minutes that belong to no step. */
  readonly step: string | null;
  readonly name: string;
  /** The step itself, as the piece has it now. */
  readonly planned: PlannedStep | null;
  /** Pick-up to put-down; null where none were recorded. */
  readonly minutes: number | null;
  readonly sessions: number;
  readonly done: boolean;
  /** What was put on. */
  readonly product: string | null;
  readonly stamps: readonly CardStamp[];
  /** How heavy its coats went on, where that was told; `part` by name. */
  readonly weights: readonly {
    readonly pass: number;
    readonly part: string | null;
    readonly weight: CoatWeight;
  }[];
  /** Conditions kept with the first stamp that had any. */
  readonly air: Air | null;
  readonly outcomes: readonly CardOutcome[];
  readonly corrections: readonly CardCorrection[];
};

type Given = {
  readonly bench: Bench;
  readonly piece: Piece;
  readonly now: Instant;
  readonly windows: readonly Window[];
  readonly corrections: readonly CardCorrection[];
  readonly facts: readonly BenchFact[];
};

/** One row for every step on which something was recorded, and one for work that belongs to none. */
export function stepRows(given: Given): readonly StepRow[] {
  const { piece, bench } = given;
  const known = new Set(piece.steps.map(({ id }) => id));
  const rows = piece.steps.map((step) => rowOfStep(given, step));
  const loose = new Set<string | null>(
    sessionsOf(bench, piece.id).flatMap(({ targets }) =>
      targets
        .filter((target) => target.piece === piece.id && !known.has(target.step ?? ''))
        .map(({ step }) => step),
    ),
  );
  for (const { step } of given.corrections) if (!known.has(step ?? '')) loose.add(step);
  const others = [...loose].map((step) => rowWith(given, step, 'other work', null));
  return [...rows, ...others].filter((row) => row !== null);
}

const rowOfStep = (given: Given, step: PlannedStep): StepRow | null => {
  const product = step.product === undefined ? undefined : given.piece.products[step.product];
  const batch = product?.can?.batch;
  const name = product?.name ?? null;
  return rowWith(
    given,
    step.id,
    step.name,
    name === null || batch === undefined ? name : `${name}, batch ${batch}`,
  );
};

function rowWith(
  given: Given,
  step: string | null,
  name: string,
  product: string | null,
): StepRow | null {
  const { piece, bench, now } = given;
  const sessions = sessionsOf(bench, piece.id).filter(({ targets }) =>
    targets.some((target) => target.piece === piece.id && target.step === step),
  );
  const corrections = given.corrections.filter((each) => each.step === step);
  const stamped = piece.stamps.filter((stamp) => stamp.step === step);
  const finishes = piece.finishes.filter((finish) => finish.step === step);
  const times = [...sessions, ...corrections]
    .map(({ start }) => start)
    .concat([...stamped, ...finishes].map(({ at }) => at));
  if (times.length === 0) return null;
  const cardStamp = cardStamps(given);
  const stamps = [
    ...stamped.map((stamp) => cardStamp(stamp, stamp.event)),
    ...finishes.map((finish) => cardStamp({ ...finish, agent: null, section: null }, 'done')),
  ].sort((a, b) => a.at - b.at);
  return {
    row: 'step',
    at: Math.min(...times),
    step,
    name,
    planned: piece.steps.find(({ id }) => id === step) ?? null,
    minutes: sessions.length === 0 ? null : stepMinutes(bench, piece, step, now),
    sessions: sessions.length,
    done: finishes.length > 0,
    product: stamps.length > 0 ? product : null,
    stamps,
    weights: coatWeightsOn(piece, step ?? '').map(({ pass, part, weight }) => ({
      pass,
      part: partName(piece, part),
      weight,
    })),
    air: [...stamped, ...finishes].find(({ air }) => air !== null)?.air ?? null,
    outcomes: given.windows
      .filter(({ subject }) => subject.stepId === step)
      .flatMap((window) => outcomeOf(window, piece, now)),
    corrections,
  };
}

type Recorded = {
  readonly fact: string;
  readonly part: string | null;
  readonly agent: string | null;
  readonly pass: number;
  readonly section: number | null;
  readonly at: Instant;
};

const cardStamps =
  ({ piece, facts }: Given) =>
  ({ fact, part, agent, pass, section, at }: Recorded, event: CardStamp['event']): CardStamp => ({
    event,
    agent,
    pass,
    section,
    part: partName(piece, part),
    at,
    movedFrom: movedFrom(facts, fact, at),
  });

/** The instant a fact was first told to be about, where it stands elsewhere now. */
export function movedFrom(facts: readonly BenchFact[], fact: string, at: Instant): Instant | null {
  const first = facts.find(({ id }) => id === fact)?.at ?? at;
  return first === at ? null : first;
}
