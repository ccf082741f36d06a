import { foreseenOn } from '../../estimate/expected.ts';
import type { IntentContext } from '../intents.ts';
import { accept, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { PlannedStep, Stamp } from '../piece.ts';
import { everyStampOf, passUnderWay, stampsOf } from '../progress.ts';
import { calledPart, factAt } from './context.ts';
import { notBeforeLast, notBeforePickUp } from './not-before.ts';
import { tookWords } from './took-words.ts';
import { locked } from './trial.ts';
import type { StepOnLane } from './step-on-lane.ts';

const not = 'Not done';

/** Finishes a step, whatever was stamped, and keeps what was expected of it. */
export function finishStep(bench: Bench, onLane: StepOnLane, context: IntentContext): Outcome {
  const { piece, part, step } = onLane;
  const refusal =
    notBeforeLast(onLane, context, not) ??
    notBeforePickUp(bench, piece, context, not) ??
    locked(piece, step, not);
  if (refusal) return refusal;
  const made = stampsOf(piece, step.id, part);
  const expectation = foreseenOn(bench, step, piece);
  const body = {
    piece: piece.id,
    part,
    step: step.id,
    // Passes that were planned and never begun are left out. Of a whole piece it is that of its furthest part.
    pass: passUnderWay(part === null ? everyStampOf(piece, step.id) : made),
    expectation,
    air: context.air,
  };
  return accept(
    [factAt(context, { kind: 'step-done', body })],
    `${step.name} done on ${calledPart(piece, part)}${without(step, made)}${tookWords(bench, onLane, expectation, context)}`,
    piece.id,
  );
}

/** What a step puts on beside other things and never got: `, without B`. A lone coat counts from its pick-up instead. */
function without(step: PlannedStep, made: readonly Stamp[]): string {
  const pass = passUnderWay(made);
  const missing = step.stamps.flatMap(({ event, agent }) =>
    agent !== undefined &&
    !made.some((stamp) => stamp.pass === pass && stamp.event === event && stamp.agent === agent)
      ? [agent]
      : [],
  );
  return missing.length === 0 ? '' : `, without ${missing.join(' and ')}`;
}
