import type { NewBenchFact, Target } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import { likeStep } from '../like-step.ts';
import type { Bench, Session } from '../bench.ts';
import type { PlannedStep } from '../piece.ts';
import { inHand, sessionHolding } from '../standing.ts';
import { stepUnderWay } from '../step-under-way.ts';
import { wrongCan } from './pot-of-stamp.ts';
import {
  anywhere,
  called,
  calledPart,
  factAt,
  instantOf,
  isOutcome,
  onBench,
  stepOf,
} from './context.ts';
import { lockedUnless } from './trial.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** `1 Oak settle and 3 Beech stool`. */
export const targetsCalled = (bench: Bench, targets: readonly Target[]): string =>
  [...new Set(targets.map((target) => target.piece))]
    .map((id) => bench.pieces.get(id))
    .filter((piece) => piece !== undefined)
    .map(called)
    .join(' and ');

const allCalled = (bench: Bench, sessions: readonly Session[]): string =>
  sessions.map(({ targets }) => targetsCalled(bench, targets)).join(' and ');

/**
 * Takes one piece or several in hand, for the step under way or one that was named, and puts down what these hands
 * held.
 */
export function pickUp(bench: Bench, intent: Asked<'pick up'>, context: IntentContext): Outcome {
  const targets: Target[] = [];
  const names: string[] = [];
  let warns: string | null = null;
  let first: { readonly step: PlannedStep | null } | undefined;
  const before: NewBenchFact[] = [];
  for (const asked of intent.targets) {
    const piece = onBench(bench, asked.piece, 'Not picked up', asked.part);
    if (isOutcome(piece)) return piece;
    const step =
      asked.step === undefined
        ? first === undefined
          ? stepUnderWay(piece, asked.part, sessionHolding(bench, piece.id))
          : likeStep(piece, asked.part, first.step)
        : asked.step === null
          ? null
          : stepOf(piece, asked.step, 'Not picked up');
    if (step !== null && isOutcome(step)) return step;
    // What goes along is at a step like that of the piece named first.
    first ??= { step };
    const bare =
      step === null ? [] : lockedUnless(piece, step, intent.anyway, context, 'Not picked up');
    if (isOutcome(bare)) return bare;
    before.push(...bare);
    targets.push({ piece: piece.id, part: asked.part, step: step?.id ?? null });
    const was = step?.leftOut === true ? 'left out' : 'skipped';
    names.push(
      `${calledPart(piece, asked.part)}, ${step?.name ?? 'other work'}${step?.skipped === true ? `, which was ${was}` : ''}`,
    );
    // Hands on a step that was left out put it back in the list, so that the keys go on with it.
    if (step?.skipped === true) {
      const body = { piece: piece.id, step: step.id, skipped: false };
      before.push(factAt(context, { kind: 'step-skipped', body }));
    }
    warns ??= step === null ? null : wrongCan(bench, piece, step, context);
  }
  if (targets.length === 0) return refuse('Not picked up: no piece was named.');
  const taken = takeInHand(bench, targets, context, intent.putDown);
  if (isOutcome(taken)) return taken;
  return accept(
    [...before, ...taken.facts],
    `picked up ${names.join(' and ')}`,
    targets[0]?.piece ?? null,
    warns,
  );
}

/** What beginning a session takes: the facts that put down what these hands held, and the pick-up itself. */
export function takeInHand(
  bench: Bench,
  targets: readonly Target[],
  context: IntentContext,
  putDown?: string,
): { readonly facts: readonly NewBenchFact[] } | Outcome {
  const at = instantOf(context);
  const held = inHand(bench);
  const same = held.find((session) => sameTargets(session.targets, targets));
  if (same) return refuse(`Not picked up: ${targetsCalled(bench, targets)} is in hand already.`);
  const leaving = sessionsToLeave(bench, held, targets, context, putDown);
  if (isOutcome(leaving)) return leaving;
  const hand = leaving[0]?.hand ?? freeHand(held);
  const earlier = bench.sessions.filter((session) => !session.dropped && session.hand === hand);
  // A key pressed now always counts; only a time that somebody gave can be wrong.
  if (context.at !== undefined) {
    const later = leaving.find((session) => session.start > at);
    if (later) {
      return refuse(
        `Not picked up: ${targetsCalled(bench, later.targets)} was picked up after that. Give a later time.`,
      );
    }
    const overlap = earlier.find((session) => session.end !== null && session.end > at);
    if (overlap) {
      return refuse(
        `Not picked up: ${targetsCalled(bench, overlap.targets)} was in hand then. Correct that session first (m, then w).`,
      );
    }
  }
  // Where the clock was set back, these hands begin when they last ended: no minute counts twice.
  const free = Math.max(...earlier.map((session) => session.end ?? session.start));
  const session = `${context.group}-s`;
  const pickedUp = factAt(context, { kind: 'picked-up', body: { session, targets, hand } });
  return {
    facts: [
      ...leaving.map((each) => factAt(context, { kind: 'put-down', body: { session: each.id } })),
      free > at ? { ...pickedUp, at: free } : pickedUp,
    ],
  };
}

/**
 * The sessions that must end for this one: those that hold its pieces and the one named; with one pair of hands,
 * whatever is in hand. Refuses where that leaves no hand free.
 */
function sessionsToLeave(
  bench: Bench,
  held: readonly Session[],
  targets: readonly Target[],
  context: IntentContext,
  putDown?: string,
): readonly Session[] | Outcome {
  if (putDown !== undefined && !held.some((session) => session.id === putDown))
    return refuse('Not picked up: what you want to put down is not in hand.');
  if (context.hands <= 1) return held;
  const leaving = held.filter(
    (session) =>
      session.id === putDown ||
      session.targets.some((each) => targets.some((target) => target.piece === each.piece)),
  );
  if (held.length - leaving.length < context.hands) return leaving;
  return {
    ok: false,
    refusal: {
      says: `Not picked up: ${allCalled(bench, held)} are in hand. Name the one to put down for it.`,
      couldPutDown: held.map(({ id }) => id),
    },
  };
}

const freeHand = (held: readonly Session[]): number => {
  let hand = 1;
  while (held.some((session) => session.hand === hand)) hand += 1;
  return hand;
};

const sameTargets = (a: readonly Target[], b: readonly Target[]): boolean =>
  a.length === b.length &&
  a.every((target, index) => {
    const other = b[index];
    return (
      target.piece === other?.piece && target.part === other.part && target.step === other.step
    );
  });

/**
 * Puts down a session: the one named, the one that holds a piece, or the only one. Refused where it isn't clear
 * which.
 */
export function putDown(bench: Bench, intent: Asked<'put down'>, context: IntentContext): Outcome {
  const held = inHand(bench);
  const session =
    intent.session !== undefined
      ? held.find((each) => each.id === intent.session)
      : intent.piece !== undefined
        ? held.find((each) => each.targets.some((target) => target.piece === intent.piece))
        : held[0];
  if (session === undefined) return nothingToPutDown(bench, held, intent);
  if (intent.session === undefined && intent.piece === undefined && held.length > 1) {
    return refuse(`Not put down: ${allCalled(bench, held)} are in hand. Say which.`);
  }
  if (context.at !== undefined && session.start > context.at) {
    return refuse(
      `Not put down: ${targetsCalled(bench, session.targets)} was picked up after that. Give a later time.`,
    );
  }
  return accept(
    [factAt(context, { kind: 'put-down', body: { session: session.id } })],
    `put down ${targetsCalled(bench, session.targets)}`,
    session.targets[0]?.piece ?? null,
  );
}

function nothingToPutDown(
  bench: Bench,
  held: readonly Session[],
  intent: Asked<'put down'>,
): Outcome {
  if (intent.session !== undefined) return refuse('Not put down: that is not in hand.');
  if (intent.piece === undefined) return refuse('Not put down: nothing is in hand.');
  const piece = anywhere(bench, intent.piece, 'Not put down');
  if (isOutcome(piece)) return piece;
  const other = held[0];
  if (other === undefined)
    return refuse(`Not put down: ${called(piece)} is not in hand; nothing is.`);
  const first = bench.pieces.get(other.targets[0]?.piece ?? '');
  return refuse(
    `Not put down: ${called(piece)} is not in hand; ${targetsCalled(bench, other.targets)} is.` +
      (first?.number === undefined || first.number === null ? '' : ` Enter on ${first.number}.`),
  );
}
