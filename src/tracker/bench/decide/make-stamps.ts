import type { NewBenchFact } from '../facts.ts';
import type { IntentContext } from '../intents.ts';
import { accept, warningOf, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { PlannedStep } from '../piece.ts';
import { stampSays, stampsOf, type NextStamp } from '../progress.ts';
import { isInHandFor, sessionHolding } from '../standing.ts';
import { calledPart, factAt, isOutcome } from './context.ts';
import { takeInHand } from './hands.ts';
import { gapTrouble } from './in-the-gap.ts';
import { minutesEarly } from './minutes-early.ts';
import { notBeforeLast, notBeforePickUp } from './not-before.ts';
import { potFor, wrongCan } from './pot-of-stamp.ts';
import { othersInThisGo } from './take-along.ts';
import { minutesInWords } from './minutes-in-words.ts';
import { locked } from './trial.ts';
import type { StepOnLane } from './step-on-lane.ts';

/** A stamp before it has an instant, with its name as the key that makes it calls it. */
export type StampToMake = Omit<Extract<NextStamp, { kind: 'stamp' }>, 'kind'>;

/** A stamp with its name: `coat 2 of 4, first stroke on`. */
export const named = (step: PlannedStep, stamp: Omit<StampToMake, 'says'>): StampToMake => ({
  ...stamp,
  says: stampSays(step, stamp),
});

/** What one key stamps. */
type Stamping = {
  readonly stamps: readonly StampToMake[];
  /** The last of them, as the key calls it. */
  readonly says: string;
  /** Whether they are work with hands on the piece: it is picked up for them where it isn't in hand for that step. */
  readonly picksUp: boolean;
  /** The session to put down where no hand is free. */
  readonly putDown?: string | undefined;
};

const not = 'Not stamped';

/** Makes stamps, and picks the piece up where they are work and it isn't in hand for that step. */
export function makeStamps(
  bench: Bench,
  onLane: StepOnLane,
  stamping: Stamping,
  context: IntentContext,
): Outcome {
  const { piece, part, step } = onLane;
  const { stamps, picksUp } = stamping;
  const refusal =
    notBeforeLast(onLane, context, not) ??
    notBeforePickUp(bench, piece, context, not) ??
    (picksUp ? locked(piece, step, not) : null);
  if (refusal) return refusal;
  const pickedUp = picksUp ? pickedUpFor(bench, onLane, stamping.putDown, context) : [];
  if (isOutcome(pickedUp)) return pickedUp;
  // Told with the stroke that begins the step; after that it is on.
  const isFirst = picksUp && stampsOf(piece, step.id, part).length === 0;
  const from = potFor(bench, onLane, stamps, context);
  return accept(
    [
      ...pickedUp,
      ...from.facts,
      ...stamps.map((stamp) => stampedFact(onLane, stamp, from.pot, context)),
    ],
    `${saysWithEarly(bench, onLane, stamping, context)}, ${step.name} on ${calledPart(piece, part)}`,
    piece.id,
    warningOf(
      picksUp ? gapTrouble(bench, onLane, stamps, context) : null,
      from.warns ?? (isFirst ? wrongCan(bench, piece, step, context) : null),
    ),
  );
}

/** The facts that take a step in hand; none where it is in hand already. */
function pickedUpFor(
  bench: Bench,
  { piece, part, step }: StepOnLane,
  putDown: string | undefined,
  context: IntentContext,
): readonly NewBenchFact[] | Outcome {
  if (isInHandFor(sessionHolding(bench, piece.id), piece.id, step.id, part)) return [];
  const others = othersInThisGo(bench, piece, part, not);
  if (others !== null) return others;
  const taken = takeInHand(bench, [{ piece: piece.id, part, step: step.id }], context, putDown);
  return isOutcome(taken) ? taken : taken.facts;
}

const stampedFact = (
  { piece, part, step }: StepOnLane,
  { event, agent, pass, section }: StampToMake,
  pot: string | null,
  context: IntentContext,
): NewBenchFact =>
  factAt(context, {
    kind: 'stamped',
    body: {
      piece: piece.id,
      part,
      step: step.id,
      event,
      agent,
      pass,
      section,
      ...(pot === null ? {} : { pot }),
      air: context.air,
    },
  });

/** `section 2 on`; where that ends a window before its opening, `section 1 wiped 3 min early, section 2 on`. */
function saysWithEarly(
  bench: Bench,
  onLane: StepOnLane,
  { stamps, says }: Stamping,
  context: IntentContext,
): string {
  const early = stamps.map((stamp) => minutesEarly(bench, onLane, stamp, context));
  const longest = Math.max(0, ...early);
  if (longest === 0) return says;
  // Of two in one key only the first can end a window too early: it is named then, and what follows it after that.
  const ended = stamps.length > 1 ? stamps[early.indexOf(longest)] : undefined;
  return ended === undefined
    ? `${says} ${minutesInWords(longest)} early`
    : `${named(onLane.step, ended).says} ${minutesInWords(longest)} early, ${says}`;
}
