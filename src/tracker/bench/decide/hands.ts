import type { Bench, Session } from '../bench.ts';
import type { NewBenchFact, Target } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import { inHand } from '../standing.ts';
import { anywhere, called, factAt, instantOf, isOutcome } from './context.ts';

type PutDown = Extract<Intent, { do: 'put down' }>;

/** `1 Oak settle and 3 Beech stool`. */
export const targetsCalled = (bench: Bench, targets: readonly Target[]): string =>
  [...new Set(targets.map((target) => target.piece))]
    .map((id) => bench.pieces.get(id))
    .filter((piece) => piece !== undefined)
    .map(called)
    .join(' and ');

const allCalled = (bench: Bench, sessions: readonly Session[]): string =>
  sessions.map(({ targets }) => targetsCalled(bench, targets)).join(' and ');

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
export function putDown(bench: Bench, intent: PutDown, context: IntentContext): Outcome {
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

function nothingToPutDown(bench: Bench, held: readonly Session[], intent: PutDown): Outcome {
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
