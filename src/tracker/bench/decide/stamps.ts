import { foreseenOn } from '../../estimate/expected.ts';
import type { NewBenchFact } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { minutesInWords, tookWords } from './took-words.ts';
import { nextAct } from '../next-act.ts';
import { accept, refuse, warningOf, type Outcome } from '../outcome.ts';
import type { Bench, Piece, PlannedStep, Stamp } from '../piece.ts';
import { everyStampOf, passUnderWay, stampSays, stampsOf, type NextStamp } from '../progress.ts';
import { isInHandFor, sessionHolding } from '../standing.ts';
import { stepUnderWay } from '../step-under-way.ts';
import { doneWithWeight } from './coat-weight.ts';
import { called, factAt, instantOf, isOutcome, onBench } from './context.ts';
import { pickUp, takeInHand } from './hands.ts';
import { gapTrouble } from './in-the-gap.ts';
import { wrongCan, potFor } from './pot-of-stamp.ts';
import { notBeforeLast, notBeforePickUp } from './not-before.ts';
import { minutesEarly } from './minutes-early.ts';
import { othersInThisGo } from './take-along.ts';
import { locked } from './trial.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;
type StampToMake = Omit<Extract<NextStamp, { kind: 'stamp' }>, 'kind'>;
type StampAsked = { readonly part: string | null; readonly putDown?: string };

/** Space: whatever the sequence of the current step expects. */
export function doNextStamp(
  bench: Bench,
  intent: Asked<'next stamp'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not stamped', intent.part);
  if (isOutcome(piece)) return piece;
  const next = nextAct(bench, piece, intent.part, {
    now: instantOf(context),
    sense: context.sense,
  });
  switch (next.act) {
    case 'nothing left':
      return refuse(`Not stamped: every step of ${called(piece)} is done. i inserts one.`);
    case 'pick up': {
      const others = othersInThisGo(bench, piece, intent.part, 'Not stamped');
      if (others !== null) return others;
      return pickUp(
        bench,
        {
          do: 'pick up',
          targets: [{ piece: piece.id, part: intent.part, step: next.step.id }],
          ...(intent.putDown === undefined ? {} : { putDown: intent.putDown }),
        },
        context,
      );
    }
    case 'stamp':
      return stampStep(bench, piece, intent, next.step, next.next, context);
    case 'done':
      return finishStep(bench, piece, intent.part, next.step, context);
  }
}

/** f: the next first stroke, whatever else the sequence would still expect before it. */
export function doFirstStroke(
  bench: Bench,
  intent: Asked<'first stroke'>,
  context: IntentContext,
): Outcome {
  const found = stepToWork(bench, intent.piece, intent.part, 'Not stamped');
  if (isOutcome(found)) return found;
  const { piece, step } = found;
  const made = stampsOf(piece, step.id, intent.part);
  const strokes = step.stamps.filter((planned) => planned.event === 'first-stroke');
  const first = strokes[0];
  if (first === undefined) {
    return refuse(
      `Not stamped: ${step.name} on ${called(piece)} has no stroke to put on. Enter: pick up.`,
    );
  }
  const pass = passUnderWay(made);
  const missing = strokes.find(
    (planned) =>
      !made.some(
        (stamp) =>
          stamp.pass === pass &&
          stamp.event === 'first-stroke' &&
          (planned.agent ?? null) === stamp.agent,
      ),
  );
  const mayRepeat = pass < (step.passes ?? 1) || step.untilRight === true;
  if (missing === undefined && !mayRepeat) {
    return refuse(
      `Not stamped: the first stroke of ${step.name} on ${called(piece)} is on. d when it is all on.`,
    );
  }
  const planned = missing ?? first;
  const stamp = {
    event: planned.event,
    agent: planned.agent ?? null,
    pass: missing === undefined ? pass + 1 : pass,
    section: null,
  };
  return stampStep(bench, piece, intent, step, named(step, stamp), context);
}

/** s: takes the last section off where that was not said, and puts the next one on. */
export function doNextSection(
  bench: Bench,
  intent: Asked<'next section'>,
  context: IntentContext,
): Outcome {
  const found = stepToWork(bench, intent.piece, intent.part, 'Not stamped');
  if (isOutcome(found)) return found;
  const { piece, step } = found;
  const sectional = step.stamps.filter((planned) => planned.perSection === true);
  if (sectional.length === 0) {
    return refuse(
      `Not stamped: ${step.name} on ${called(piece)} is not worked in sections. Space: next stamp.`,
    );
  }
  const made = stampsOf(piece, step.id, intent.part);
  const pass = passUnderWay(made);
  const section = made.reduce(
    (latest, stamp) => Math.max(latest, stamp.pass === pass ? (stamp.section ?? 0) : 0),
    0,
  );
  const off = sectional.find((planned) => planned.event === 'section-off');
  const isOff = made.some(
    (stamp) => stamp.pass === pass && stamp.section === section && stamp.event === 'section-off',
  );
  const stamps: StampToMake[] = [];
  if (off !== undefined && section > 0 && !isOff) {
    stamps.push({ event: 'section-off', agent: off.agent ?? null, pass, section, says: off.says });
  }
  const on = sectional.find((planned) => planned.event === 'section-on') ?? sectional[0];
  if (on !== undefined)
    stamps.push({
      event: on.event,
      agent: on.agent ?? null,
      pass,
      section: section + 1,
      says: on.says,
    });
  return stampAll(bench, piece, intent, step, stamps, `section ${section + 1} on`, context);
}

/** d: the current step is finished, whatever was stamped. */
export function doDone(bench: Bench, intent: Asked<'done'>, context: IntentContext): Outcome {
  const found = stepToWork(bench, intent.piece, intent.part, 'Not done');
  if (isOutcome(found)) return found;
  const { piece, step } = found;
  const done = finishStep(bench, piece, intent.part, step, context);
  return doneWithWeight(done, intent.coat, step, piece, context);
}

/** A stamp with its name, as the key that makes it calls it. */
export const named = (step: PlannedStep, stamp: Omit<StampToMake, 'says'>): StampToMake => ({
  ...stamp,
  says: stampSays(step, stamp),
});

function stepToWork(
  bench: Bench,
  id: string,
  part: string | null,
  not: string,
): { piece: Piece; step: PlannedStep } | Outcome {
  const piece = onBench(bench, id, not, part);
  if (isOutcome(piece)) return piece;
  const step = stepUnderWay(piece, part, sessionHolding(bench, piece.id));
  if (step === null)
    return refuse(`${not}: every step of ${called(piece)} is done. i inserts one.`);
  return { piece, step };
}

const stampStep = (
  bench: Bench,
  piece: Piece,
  asked: StampAsked,
  step: PlannedStep,
  next: StampToMake,
  context: IntentContext,
): Outcome => stampAll(bench, piece, asked, step, [next], next.says, context);

/** Makes stamps, and picks the piece up where a stroke goes on and it isn't in hand for that step. */
export function stampAll(
  bench: Bench,
  piece: Piece,
  { part, putDown }: StampAsked,
  step: PlannedStep,
  stamps: readonly StampToMake[],
  says: string,
  context: IntentContext,
  picksUp = true,
): Outcome {
  const bad = notBeforeLast(piece, step.id, part, context, 'Not stamped');
  if (bad) return bad;
  const tooEarly = notBeforePickUp(bench, piece, context, 'Not stamped');
  if (tooEarly) return tooEarly;
  const facts: NewBenchFact[] = [];
  const isHeld = isInHandFor(sessionHolding(bench, piece.id), piece.id, step.id, part);
  const lock = picksUp ? locked(piece, step, 'Not stamped') : null;
  if (lock !== null) return lock;
  if (picksUp && !isHeld) {
    const others = othersInThisGo(bench, piece, part, 'Not stamped');
    if (others !== null) return others;
    const taken = takeInHand(bench, [{ piece: piece.id, part, step: step.id }], context, putDown);
    if (isOutcome(taken)) return taken;
    facts.push(...taken.facts);
  }
  // Told with the stroke that begins the step; after that it is on.
  const isFirst = picksUp && stampsOf(piece, step.id, part).length === 0;
  const warnsOfCan = isFirst ? wrongCan(bench, piece, step, context) : null;
  const from = potFor(bench, piece, step, stamps, context);
  facts.push(...from.facts);
  for (const { event, agent, pass, section } of stamps) {
    facts.push(
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
          ...(from.pot === null ? {} : { pot: from.pot }),
          air: context.air,
        },
      }),
    );
  }
  const early = stamps.map((stamp) => minutesEarly(bench, piece, step.id, part, stamp, context));
  const soon = Math.max(0, ...early);
  // Of two in one key only the first can end a window too early: it is named then, and what follows it after that.
  const ended = stamps.length > 1 ? stamps[early.indexOf(soon)] : undefined;
  const follows = ended === undefined ? '' : `, ${says}`;
  const told =
    soon > 0
      ? `${ended === undefined ? says : named(step, ended).says} ${minutesInWords(soon)} early${follows}`
      : says;
  return accept(
    facts,
    `${told}, ${step.name} on ${called(piece)}`,
    piece.id,
    warningOf(
      picksUp ? gapTrouble(bench, piece, step, part, stamps, context) : null,
      from.warns ?? warnsOfCan,
    ),
  );
}

function finishStep(
  bench: Bench,
  piece: Piece,
  part: string | null,
  step: PlannedStep,
  context: IntentContext,
): Outcome {
  const bad =
    notBeforeLast(piece, step.id, part, context, 'Not done') ??
    notBeforePickUp(bench, piece, context, 'Not done') ??
    locked(piece, step, 'Not done');
  if (bad) return bad;
  const expectation = foreseenOn(bench, step, piece);
  const body = {
    piece: piece.id,
    part,
    step: step.id,
    // Passes that were planned and never begun are left out. Of a whole piece it is that of its furthest part.
    pass: passUnderWay(
      part === null ? everyStampOf(piece, step.id) : stampsOf(piece, step.id, part),
    ),
    expectation,
    air: context.air,
  };
  return accept(
    [factAt(context, { kind: 'step-done', body })],
    `${step.name} done on ${called(piece)}${without(step, stampsOf(piece, step.id, part))}${tookWords(bench, piece, step, expectation, context)}`,
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
