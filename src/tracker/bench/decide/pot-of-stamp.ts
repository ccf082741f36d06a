import { canTrouble } from '../../trade/can-trouble.ts';
import type { StampEvent } from '../../windows/model.ts';
import type { NewBenchFact } from '../facts.ts';
import type { IntentContext } from '../intents.ts';
import { otherBatch } from '../matches/index.ts';
import { warningOf } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { isMixed, openPotOf, openPots, potTrouble } from '../pot-window.ts';
import { factAt, instantOf } from './context.ts';
import { newPot } from './pots.ts';
import type { StepOnLane } from './step-on-lane.ts';

/** The pot that goes with some stamps: its id is kept with them. */
export type PotOfStamp = {
  readonly pot: string | null;
  readonly facts: readonly NewBenchFact[];
  readonly warns: string | null;
};

/** What is wrong with the can that a step is about to use: its age, or not its partner's batch; null where nothing is. */
export function wrongCan(
  bench: Bench,
  piece: Piece,
  step: PlannedStep,
  { today }: IntentContext,
): string | null {
  const product = step.product === undefined ? undefined : piece.products[step.product];
  if (product === undefined) return null;
  return warningOf(canTrouble(product, today), otherBatch(bench, piece, step));
}

const none: PotOfStamp = { pot: null, facts: [], warns: null };
const takes: ReadonlySet<StampEvent> = new Set(['first-stroke', 'section-on', 'topped-up']);

/**
 * Mixing in a step mixes a pot that other pieces may take from too; a stroke takes from the open pot of its product; and
 * washing out ends the pot. A step that was mixed for before there were shared pots goes on with its own.
 */
export function potFor(
  bench: Bench,
  { piece, step }: StepOnLane,
  stamps: readonly { readonly event: StampEvent }[],
  context: IntentContext,
): PotOfStamp {
  const product = step.product === undefined ? undefined : piece.products[step.product];
  const own = piece.stamps.filter((stamp) => stamp.step === step.id);
  const hasOwnPot = own.some(({ event, pot }) => event === 'mixed' && pot === undefined);
  if (product === undefined || hasOwnPot || !isMixed(product)) return none;
  const has = (event: StampEvent): boolean => stamps.some((stamp) => stamp.event === event);
  if (has('mixed')) {
    const { id, fact } = newPot(bench, product, context);
    return { pot: id, facts: [fact], warns: null };
  }
  if (has('washed-out')) {
    const used = own.findLast(({ pot }) => pot !== undefined)?.pot;
    const pot = openPots(bench).find(({ id }) => id === used) ?? openPotOf(bench, product.id);
    if (pot === null || instantOf(context) < pot.mixedAt) return none;
    const fact = factAt(context, { kind: 'pot-washed', body: { pot: pot.id } });
    return { pot: pot.id, facts: [fact], warns: null };
  }
  if (!stamps.some(({ event }) => takes.has(event))) return none;
  const pot = openPotOf(bench, product.id);
  if (pot === null || instantOf(context) < pot.mixedAt) return none;
  return { pot: pot.id, facts: [], warns: potTrouble(pot, instantOf(context), context.sense) };
}
