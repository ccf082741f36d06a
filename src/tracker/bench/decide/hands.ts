import type { NewBenchFact, Target } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench, Piece, Session } from '../piece.ts';
import { currentStep } from '../progress.ts';
import { inHand } from '../standing.ts';
import { called, factAt, instantOf, isOutcome, notInFuture, onBench } from './context.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** `1 Oak settle and 3 Beech stool`. */
export const targetsCalled = (bench: Bench, targets: readonly Target[]): string =>
  [...new Set(targets.map((target) => target.piece))]
    .map((id) => bench.pieces.get(id))
    .filter((piece) => piece !== undefined)
    .map(called)
    .join(' and ');

const stepName = (piece: Piece, step: string | null): string =>
  piece.steps.find((each) => each.id === step)?.name ?? 'other work';

export function pickUp(bench: Bench, intent: Asked<'pick up'>, context: IntentContext): Outcome {
  const future = notInFuture(context, 'Not picked up');
  if (future) return future;
  const targets: Target[] = [];
  const names: string[] = [];
  for (const asked of intent.targets) {
    const piece = onBench(bench, asked.piece, 'Not picked up');
    if (isOutcome(piece)) return piece;
    const step =
      asked.step === undefined ? (currentStep(piece, asked.part)?.id ?? null) : asked.step;
    if (step !== null && !piece.steps.some((each) => each.id === step)) {
      return refuse(`Not picked up: ${called(piece)} has no step "${step}".`);
    }
    targets.push({ piece: piece.id, part: asked.part, step });
    names.push(`${called(piece)}, ${stepName(piece, step)}`);
  }
  if (targets.length === 0) return refuse('Not picked up: no piece was named.');
  const taken = takeInHand(bench, targets, context, intent.putDown);
  if (isOutcome(taken)) return taken;
  return accept(taken.facts, `pick up ${names.join(' and ')}`, targets[0]?.piece ?? null);
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
  const leaving = sessionToLeave(bench, held, targets, context, putDown);
  if (leaving !== null && isOutcome(leaving)) return leaving;
  if (leaving !== null && leaving.start > at) {
    return refuse(
      `Not picked up: ${targetsCalled(bench, leaving.targets)} was picked up after that. Give a later time.`,
    );
  }
  const hand = leaving?.hand ?? freeHand(held);
  const overlap = bench.sessions.find(
    (session) =>
      !session.dropped && session.hand === hand && session.end !== null && session.end > at,
  );
  if (overlap) {
    return refuse(
      `Not picked up: ${targetsCalled(bench, overlap.targets)} was in hand then. Correct that session first (m, then w).`,
    );
  }
  const session = `${context.group}-s`;
  return {
    facts: [
      ...(leaving === null
        ? []
        : [factAt(context, { kind: 'put-down', body: { session: leaving.id } })]),
      factAt(context, { kind: 'picked-up', body: { session, targets, hand } }),
    ],
  };
}

/** The session that must end for this one: the same piece's, or with all hands full the only one, or the one named. */
function sessionToLeave(
  bench: Bench,
  held: readonly Session[],
  targets: readonly Target[],
  context: IntentContext,
  putDown?: string,
): Session | Outcome | null {
  const onSamePiece = held.find((session) =>
    session.targets.some((each) => targets.some((target) => target.piece === each.piece)),
  );
  if (onSamePiece) return onSamePiece;
  if (putDown !== undefined) {
    const named = held.find((session) => session.id === putDown);
    return named ?? refuse('Not picked up: what you want to put down is not in hand.');
  }
  if (held.length < context.hands) return null;
  if (held.length === 1) return held[0] ?? null;
  const names = held.map((session) => targetsCalled(bench, session.targets)).join(', and ');
  return refuse(`Not picked up: ${names} are in hand. Put one of them down first.`);
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

export function putDown(bench: Bench, intent: Asked<'put down'>, context: IntentContext): Outcome {
  const future = notInFuture(context, 'Not put down');
  if (future) return future;
  const held = inHand(bench);
  const session =
    intent.session !== undefined
      ? held.find((each) => each.id === intent.session)
      : intent.piece !== undefined
        ? held.find((each) => each.targets.some((target) => target.piece === intent.piece))
        : held[0];
  if (session === undefined) return nothingToPutDown(bench, held, intent.piece);
  if (intent.session === undefined && intent.piece === undefined && held.length > 1) {
    const names = held.map((each) => targetsCalled(bench, each.targets)).join(', and ');
    return refuse(`Not put down: ${names} are in hand. Say which.`);
  }
  if (session.start > instantOf(context)) {
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
  asked: string | undefined,
): Outcome {
  const piece = asked === undefined ? undefined : bench.pieces.get(asked);
  const other = held[0];
  if (piece === undefined) return refuse('Not put down: nothing is in hand.');
  if (other === undefined)
    return refuse(`Not put down: ${called(piece)} is not in hand; nothing is.`);
  const first = bench.pieces.get(other.targets[0]?.piece ?? '');
  return refuse(
    `Not put down: ${called(piece)} is not in hand; ${targetsCalled(bench, other.targets)} is.` +
      (first?.number === undefined || first.number === null ? '' : ` Enter on ${first.number}.`),
  );
}
