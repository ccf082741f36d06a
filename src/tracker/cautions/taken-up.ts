import type { NewBenchFact } from '../bench/facts.ts';
import type { StampEvent } from '../windows/model.ts';
import type { Caution } from './caution.ts';
import { cautionsOfStep, type StepCautions } from './cautions-of-step.ts';
import type { Moment } from './chemicals.ts';

/** A step that was just picked up, begun or put in, with what to be careful about from now on. */
export type TakenUp = {
  readonly piece: string;
  readonly step: string;
  /** It was picked up: then all is said, not only what comes of this moment. */
  readonly pickedUp: boolean;
  /** Only a further section of it was begun: what was said with the first one holds, and is not said again. */
  readonly goesOn: boolean;
  readonly cautions: StepCautions;
};

const beginnings: ReadonlySet<StampEvent> = new Set(['first-stroke', 'section-on', 'mixed']);

/** What new facts take up, on the bench that has them already. */
export function takenUp(facts: readonly NewBenchFact[], moment: Moment): readonly TakenUp[] {
  const steps = new Map<string, Omit<TakenUp, 'cautions'>>();
  const take = (piece: string, step: string | null, pickedUp: boolean, goesOn = false): void => {
    if (step === null) return;
    const key = `${piece}/${step}`;
    const before = steps.get(key);
    steps.set(key, {
      piece,
      step,
      pickedUp: pickedUp || before?.pickedUp === true,
      goesOn: goesOn && before?.goesOn !== false,
    });
  };
  for (const fact of facts) {
    if (fact.kind === 'picked-up')
      for (const { piece, step } of fact.body.targets) take(piece, step, true);
    if (fact.kind === 'step-inserted') take(fact.body.piece, fact.body.step.id, false);
    if (fact.kind === 'stamped' && beginnings.has(fact.body.event))
      take(fact.body.piece, fact.body.step, false, (fact.body.section ?? 1) > 1);
  }
  return [...steps.values()].flatMap((each) => {
    const piece = moment.bench.pieces.get(each.piece);
    const step = piece?.steps.find(({ id }) => id === each.step);
    if (piece === undefined || step === undefined) return [];
    return [{ ...each, cautions: cautionsOfStep(piece, step, moment) }];
  });
}

/** What comes of what was done before and goes on beside: short enough to be said with what a key did. */
export const ofTheMoment = (taken: readonly TakenUp[]): readonly Caution[] => {
  const seen = new Set<string>();
  return taken
    .flatMap(({ cautions, goesOn }) =>
      goesOn ? cautions.all.filter(({ deadly }) => deadly) : cautions.all,
    )
    .filter((each) => each.ofTheMoment && !seen.has(each.id) && seen.add(each.id));
};
