import type { Bench } from '../bench.ts';
import type { NewBenchFact, Target } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { likeStep } from '../like-step.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { sessionHolding } from '../standing.ts';
import { stepUnderWay } from '../step-under-way.ts';
import { minutesTooSoon } from '../too-soon.ts';
import { calledPart, factAt, instantOf, isOutcome, onBench, stepOf } from './context.ts';
import { takeInHand } from './hands.ts';
import { minutesInWords } from './minutes-in-words.ts';
import { wrongCan } from './pot-of-stamp.ts';
import { lockedUnless } from './trial.ts';

type PickUp = Extract<Intent, { do: 'pick up' }>;

/**
 * Takes one piece or several in hand, for the step under way or one that was named, and puts down what these hands
 * held.
 */
export function pickUp(bench: Bench, intent: PickUp, context: IntentContext): Outcome {
  const begun: Begun[] = [];
  for (const asked of intent.targets) {
    const next = begin(bench, asked, { first: begun[0], anyway: intent.anyway }, context);
    if (isOutcome(next)) return next;
    begun.push(next);
  }
  const [first] = begun;
  if (first === undefined) return refuse('Not picked up: no piece was named.');
  const targets = begun.map(({ target }) => target);
  const taken = takeInHand(bench, targets, context, intent.putDown);
  if (isOutcome(taken)) return taken;
  return accept(
    [...begun.flatMap(({ before }) => before), ...taken.facts],
    `picked up ${begun.map(({ says }) => says).join(' and ')}`,
    first.target.piece,
    begun.map(({ warns }) => warns).find((each) => each !== null) ?? null,
  );
}

/** Work on one piece, about to begin. */
type Begun = {
  readonly target: Target;
  /** Null for work that belongs to no step. */
  readonly step: PlannedStep | null;
  /** Facts that must be there before it is in hand. */
  readonly before: readonly NewBenchFact[];
  readonly says: string;
  readonly warns: string | null;
};

function begin(
  bench: Bench,
  asked: PickUp['targets'][number],
  { first, anyway }: { readonly first: Begun | undefined; readonly anyway: string | undefined },
  context: IntentContext,
): Begun | Outcome {
  const piece = onBench(bench, asked.piece, 'Not picked up', asked.part);
  if (isOutcome(piece)) return piece;
  const step = stepMeant(bench, piece, asked, first);
  if (step !== null && isOutcome(step)) return step;
  const target: Target = { piece: piece.id, part: asked.part, step: step?.id ?? null };
  const on = calledPart(piece, asked.part);
  if (step === null) return { target, step, before: [], says: `${on}, other work`, warns: null };
  const waived = lockedUnless(piece, step, anyway, context, 'Not picked up');
  if (isOutcome(waived)) return waived;
  const was = step.leftOut === true ? 'left out' : 'skipped';
  const lane = { piece, part: asked.part, step };
  const soon = minutesTooSoon(bench, lane, instantOf(context), context.sense);
  const early = soon > 0 ? `, ${minutesInWords(soon)} early` : '';
  return {
    target,
    step,
    // Hands on a step that was left out put it back in the list, so that the keys go on with it.
    before: step.skipped ? [...waived, notSkipped(piece, step, context)] : waived,
    says: `${on}, ${step.name}${step.skipped ? `, which was ${was}` : ''}${early}`,
    warns: wrongCan(bench, piece, step, context),
  };
}

/** The step that was named; else the one under way, or what is like the step of the piece that was named first. */
function stepMeant(
  bench: Bench,
  piece: Piece,
  { part, step }: PickUp['targets'][number],
  first: Begun | undefined,
): PlannedStep | null | Outcome {
  if (step === null) return null;
  if (step !== undefined) return stepOf(piece, step, 'Not picked up');
  return first === undefined
    ? stepUnderWay(piece, part, sessionHolding(bench, piece.id))
    : likeStep(piece, part, first.step);
}

const notSkipped = (piece: Piece, step: PlannedStep, context: IntentContext): NewBenchFact => {
  const body = { piece: piece.id, step: step.id, skipped: false };
  return factAt(context, { kind: 'step-skipped', body });
};
