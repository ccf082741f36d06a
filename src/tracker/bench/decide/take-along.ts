import type { NewBenchFact, Target } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { likeStep } from '../like-step.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench, Session } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { countsFor, isDone } from '../progress.ts';
import { inHand, sessionHolding } from '../standing.ts';
import { called, factAt, isOutcome, onBench } from './context.ts';
import { targetsCalled } from './hands.ts';
import { pickUp } from './pick-up.ts';
import { wrongCan } from './pot-of-stamp.ts';

const not = 'Not taken along';

/**
 * Takes a piece along into what is in hand, or out of it again: one go over several pieces, each stamped as it is done.
 * Its minutes are shared by size from its beginning, so that setup is paid once, whenever a piece came along. With
 * nothing in hand it is picked up; with two pairs of hands it joins those that picked up last.
 */
export function takeAlong(
  bench: Bench,
  intent: Extract<Intent, { do: 'take along' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, not, intent.part);
  if (isOutcome(piece)) return piece;
  const holding = sessionHolding(bench, piece.id);
  if (holding !== null) return leaveOut(bench, holding, piece, intent.part, context);
  const session = inHand(bench).at(-1);
  if (session === undefined)
    return pickUp(
      bench,
      { do: 'pick up', targets: [{ piece: piece.id, part: intent.part }] },
      context,
    );
  if (context.at !== undefined && context.at < session.start)
    return refuse(
      `${not}: ${targetsCalled(bench, session.targets)} was picked up after that. Give a later time.`,
    );
  const step = likeStep(piece, intent.part, stepInHand(bench, session));
  const isOtherWork = session.targets.every((target) => target.step === null);
  if (step === null && !isOtherWork)
    return refuse(`${not}: every step of ${called(piece)} is done. i inserts one.`);
  const target: Target = { piece: piece.id, part: intent.part, step: step?.id ?? null };
  return accept(
    [targetsChanged(session, [...session.targets, target], context)],
    `${called(piece)} taken along, ${step?.name ?? 'other work'}`,
    piece.id,
    step === null ? null : wrongCan(bench, piece, step, context),
  );
}

/** A part beside its sister goes along too; what is there already goes out again, unless it was worked in this go. */
function leaveOut(
  bench: Bench,
  session: Session,
  piece: Piece,
  part: string | null,
  context: IntentContext,
): Outcome {
  const own = session.targets.filter((target) => target.piece === piece.id);
  const same = own.filter((target) => countsFor(target.part, part) || part === null);
  if (same.length === 0) {
    const step = likeStep(piece, part, stepInHand(bench, session));
    const target: Target = { piece: piece.id, part, step: step?.id ?? null };
    const partName = piece.parts.find(({ id }) => id === part)?.name ?? '';
    return accept(
      [targetsChanged(session, [...session.targets, target], context)],
      `${called(piece)}, ${partName}, taken along`,
      piece.id,
    );
  }
  const left = session.targets.filter((target) => !same.includes(target));
  if (left.length === 0)
    return refuse(`Not taken out: ${called(piece)} is all there is in hand. Enter puts it down.`);
  const wasWorked = [...piece.stamps, ...piece.finishes].some(
    (record) =>
      record.at >= session.start &&
      same.some(({ step, part: own }) => record.step === step && countsFor(own, record.part)),
  );
  if (wasWorked)
    return refuse(
      `Not taken out: ${called(piece)} was worked in this go. Enter puts all of it down; d when it is done.`,
    );
  return accept([targetsChanged(session, left, context)], `${called(piece)} taken out`, piece.id);
}

const targetsChanged = (
  session: Session,
  targets: readonly Target[],
  context: IntentContext,
): NewBenchFact =>
  factAt(context, { kind: 'targets-changed', body: { session: session.id, targets } });

/** The first step that a session is for; null for other work alone. */
function stepInHand(bench: Bench, session: Session): PlannedStep | null {
  for (const { piece, step } of session.targets) {
    const found = bench.pieces.get(piece)?.steps.find(({ id }) => id === step);
    if (found !== undefined) return found;
  }
  return null;
}

/**
 * Refuses a key that would put down, for the next step of a piece that is finished in this go or for a part that is not in
 * it, pieces that are not done: the key was most likely meant for one of them. Null where nothing stands in its way.
 */
export function othersInThisGo(
  bench: Bench,
  piece: Piece,
  part: string | null,
  notDone: string,
): Outcome | null {
  const session = sessionHolding(bench, piece.id);
  if (session === null) return null;
  const isFinished = ({ piece: id, part: own, step }: Target): boolean => {
    const other = bench.pieces.get(id);
    return other === undefined || step === null || isDone(other, step, own);
  };
  const own = session.targets.filter(
    (target) => target.piece === piece.id && (part === null || countsFor(target.part, part)),
  );
  const open = session.targets.filter((target) => target.piece !== piece.id && !isFinished(target));
  if (open.length === 0 || !own.every(isFinished)) return null;
  const others = targetsCalled(bench, open);
  const are = open.length > 1 ? 'are' : 'is';
  // The keys go on from a part that is done to its sister, which is perhaps not in this go.
  if (own.length === 0) {
    const partName = piece.parts.find(({ id }) => id === part)?.name ?? '';
    return refuse(
      `${notDone}: ${called(piece)}, ${partName}, is not in this go, and ${others} ${are} not done. e takes it along; Enter puts all of it down.`,
    );
  }
  return refuse(
    `${notDone}: ${called(piece)} is done in this go; ${others} ${are} not. Enter puts all of it down.`,
  );
}
