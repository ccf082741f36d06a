import { coatToWeigh, passToWeigh } from '../coat-weight.ts';
import type { CoatWeight, NewBenchFact } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { isCoat } from '../matches/coats-of.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { called, factAt, isOutcome, onBench, stepOf } from './context.ts';
import type { StepOnLane } from './step-on-lane.ts';

/** Thin, normal or heavy: told of a coat that is on, and what was told before counts no more. */
export function tellCoatWeight(
  bench: Bench,
  intent: Extract<Intent, { do: 'tell coat weight' }>,
  context: IntentContext,
): Outcome {
  const not = 'Not noted';
  const piece = onBench(bench, intent.piece, not, intent.part);
  if (isOutcome(piece)) return piece;
  const step = intent.step === undefined ? null : stepOf(piece, intent.step, not);
  if (step !== null && isOutcome(step)) return step;
  const coat = coatToWeigh(piece, step?.id ?? null);
  if (coat === null) return refuse(`${not}: no coat is on ${called(piece)} yet.`);
  if (step !== null && coat.id !== step.id)
    return refuse(`${not}: ${step.name} on ${called(piece)} is no coat that is on.`);
  return accept(
    [
      weighed(
        { piece, part: intent.part, step: coat },
        passToWeigh(piece, coat),
        intent.weight,
        context,
      ),
    ],
    `${intent.weight} coat, ${coat.name} on ${called(piece)}`,
    piece.id,
  );
}

/** The same told with "done": one deed. */
export function doneWithWeight(
  done: Outcome,
  onLane: StepOnLane,
  weight: CoatWeight | undefined,
  context: IntentContext,
): Outcome {
  if (!done.ok || weight === undefined) return done;
  if (!isCoat(onLane.step))
    return refuse(`Not done: ${onLane.step.name} is no coat, so it is neither thin nor heavy.`);
  const [finish] = done.facts;
  if (finish?.kind !== 'step-done') return done;
  return {
    ...done,
    facts: [...done.facts, weighed(onLane, finish.body.pass, weight, context)],
    says: `${done.says}, ${weight} coat`,
  };
}

const weighed = (
  { piece, part, step }: StepOnLane,
  pass: number,
  weight: CoatWeight,
  context: IntentContext,
): NewBenchFact =>
  factAt(context, {
    kind: 'coat-weighed',
    body: { piece: piece.id, part, step: step.id, pass, weight },
  });
