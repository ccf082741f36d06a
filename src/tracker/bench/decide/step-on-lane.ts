import { refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { sessionHolding } from '../standing.ts';
import { stepUnderWay } from '../step-under-way.ts';
import { called, isOutcome, onBench } from './context.ts';

/** What hands work at: a step of a piece, for one part of it or (part null) for all of it. */
export type StepOnLane = {
  readonly piece: Piece;
  readonly part: string | null;
  readonly step: PlannedStep;
};

/** The step that a key means which names a piece only, or a refusal that begins with `not`. */
export function stepToWork(
  bench: Bench,
  asked: { readonly piece: string; readonly part: string | null },
  not: string,
): StepOnLane | Outcome {
  const { part } = asked;
  const piece = onBench(bench, asked.piece, not, part);
  if (isOutcome(piece)) return piece;
  const step = stepUnderWay(piece, part, sessionHolding(bench, piece.id));
  return step === null
    ? refuse(`${not}: every step of ${called(piece)} is done. i inserts one.`)
    : { piece, part, step };
}
