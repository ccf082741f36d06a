import type { StampEvent } from '../../windows/model.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { refuse, type Outcome } from '../outcome.ts';
import { outrightStamps } from '../outright-stamps.ts';
import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep, Stamp } from '../piece.ts';
import { countsFor, currentStep, passUnderWay, stampsOf } from '../progress.ts';
import { isInHandFor, sessionHolding } from '../standing.ts';
import { called, instantOf, isOutcome, onBench, stepOf } from './context.ts';
import { makeStamps, named } from './make-stamps.ts';

/**
 * Any stamp outright: topped up, covered, turned, clamps off. It belongs to the step that was named; else to that of which
 * it changes a window; else to the one in hand or the last that was begun.
 */
export function doStamp(
  bench: Bench,
  intent: Extract<Intent, { do: 'stamp' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not stamped', intent.part);
  if (isOutcome(piece)) return piece;
  const told = outrightStamps(bench, piece, intent.part, {
    now: instantOf(context),
    sense: context.sense,
  }).find(
    ({ event, agent, step }) =>
      event === intent.event &&
      (intent.agent === undefined || agent === intent.agent) &&
      (intent.step === undefined || step.id === intent.step),
  );
  const step =
    intent.step === undefined
      ? (told?.step ?? stepStamped(bench, piece, intent.part))
      : stepOf(piece, intent.step, 'Not stamped');
  if (step === null) return refuse(`Not stamped: nothing was begun on ${called(piece)}.`);
  if (isOutcome(step)) return step;
  const made = stampsOf(piece, step.id, intent.part);
  const pass = passUnderWay(made);
  const section = sectionMeant(made, pass, intent.event);
  if (section === 'is on')
    return refuse(
      `Not stamped: the last section of ${step.name} on ${called(piece)} is on. Space: next stamp.`,
    );
  const stamp = {
    event: intent.event,
    agent: intent.agent ?? told?.agent ?? null,
    pass,
    section,
  };
  const { says } = named(step, stamp);
  return makeStamps(
    bench,
    { piece, part: intent.part, step },
    { stamps: [{ ...stamp, says }], says, picksUp: false },
    context,
  );
}

/** The section that was last worked; one more goes on only after that is off. */
function sectionMeant(
  made: readonly Stamp[],
  pass: number,
  event: StampEvent,
): number | null | 'is on' {
  const section = made.at(-1)?.section ?? null;
  if (section === null || event !== 'section-on') return section;
  const isOff = made.some(
    (stamp) => stamp.pass === pass && stamp.section === section && stamp.event === 'section-off',
  );
  return isOff ? section + 1 : 'is on';
}

/** Where a stamp goes that changes nothing: to the step in hand, else to the last one begun, else to the next. */
function stepStamped(bench: Bench, piece: Piece, part: string | null): PlannedStep | null {
  const held = sessionHolding(bench, piece.id);
  const inHand = piece.steps.find(({ id }) => isInHandFor(held, piece.id, id, part));
  const begun = piece.steps.filter(
    (step) => stampsOf(piece, step.id, part).length > 0 || hasFinish(piece, step.id, part),
  );
  return inHand ?? begun.at(-1) ?? currentStep(piece, part);
}

const hasFinish = (piece: Piece, step: string, part: string | null): boolean =>
  piece.finishes.some(
    (finish) => finish.step === step && (part === null || countsFor(finish.part, part)),
  );
