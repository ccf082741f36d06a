import type { PlannedStamp } from '../../trade/schedule.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { nextAct } from '../next-act.ts';
import { refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { passUnderWay, stampsOf } from '../progress.ts';
import { doneWithWeight } from './coat-weight.ts';
import { called, instantOf, isOutcome, onBench } from './context.ts';
import { finishStep } from './finish-step.ts';
import { pickUp } from './pick-up.ts';
import { makeStamps, named, type StampToMake } from './make-stamps.ts';
import { othersInThisGo } from './take-along.ts';
import { stepToWork } from './step-on-lane.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

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
      return makeStamps(
        bench,
        { piece, part: intent.part, step: next.step },
        oneStamp(next.next, intent.putDown),
        context,
      );
    case 'done':
      return finishStep(bench, { piece, part: intent.part, step: next.step }, context);
  }
}

/** f: the next first stroke, whatever else the sequence would still expect before it. */
export function doFirstStroke(
  bench: Bench,
  intent: Asked<'first stroke'>,
  context: IntentContext,
): Outcome {
  const onLane = stepToWork(bench, intent, 'Not stamped');
  if (isOutcome(onLane)) return onLane;
  const { piece, step } = onLane;
  const strokes = step.stamps.filter((planned) => planned.event === 'first-stroke');
  const [first] = strokes;
  if (first === undefined) {
    return refuse(
      `Not stamped: ${step.name} on ${called(piece)} has no stroke to put on. Enter: pick up.`,
    );
  }
  const made = stampsOf(piece, step.id, intent.part);
  const pass = passUnderWay(made);
  const isOn = ({ event, agent }: PlannedStamp): boolean =>
    made.some(
      (stamp) => stamp.pass === pass && stamp.event === event && stamp.agent === (agent ?? null),
    );
  const missing = strokes.find((planned) => !isOn(planned));
  const mayRepeat = pass < (step.passes ?? 1) || step.untilRight === true;
  if (missing === undefined && !mayRepeat) {
    return refuse(
      `Not stamped: the first stroke of ${step.name} on ${called(piece)} is on. d when it is all on.`,
    );
  }
  const stamp = named(step, {
    event: 'first-stroke',
    agent: (missing ?? first).agent ?? null,
    pass: missing === undefined ? pass + 1 : pass,
    section: null,
  });
  return makeStamps(bench, onLane, oneStamp(stamp, intent.putDown), context);
}

/** s: takes the last section off where that was not said, and puts the next one on. */
export function doNextSection(
  bench: Bench,
  intent: Asked<'next section'>,
  context: IntentContext,
): Outcome {
  const onLane = stepToWork(bench, intent, 'Not stamped');
  if (isOutcome(onLane)) return onLane;
  const { piece, step } = onLane;
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
  const says = `section ${section + 1} on`;
  return makeStamps(
    bench,
    onLane,
    { stamps, says, picksUp: true, putDown: intent.putDown },
    context,
  );
}

/** d: the current step is finished, whatever was stamped. */
export function doDone(bench: Bench, intent: Asked<'done'>, context: IntentContext): Outcome {
  const onLane = stepToWork(bench, intent, 'Not done');
  if (isOutcome(onLane)) return onLane;
  return doneWithWeight(finishStep(bench, onLane, context), onLane, intent.coat, context);
}

/** One stamp made with hands on the piece. */
const oneStamp = (stamp: StampToMake, putDown: string | undefined) => ({
  stamps: [stamp],
  says: stamp.says,
  picksUp: true,
  putDown,
});
