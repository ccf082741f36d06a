import type { Piece, PlannedStep } from '../bench/piece.ts';
import { isDone } from '../bench/progress.ts';
import { speaksOf, type CautionRule, type TradeRules } from '../trade/caution-rules.ts';
import type { Caution } from './caution.ts';
import type { Moment } from './chemicals.ts';
import { dangerousMeetings } from './dangerous.ts';
import { leadStanding } from './lead.ts';
import { neighbourCautions } from './neighbours.ts';
import { onceAStep } from './once-a-step.ts';
import { partnersFor } from './partners.ts';
import { isOursOnBare, overCautions } from './surface.ts';
import { productOf } from './works.ts';

/** Everything to be careful about in a step at one moment. */
export type StepCautions = {
  /** What can kill first, then what comes of this piece and its neighbours, then what the product and such work ask for. */
  readonly all: readonly Caution[];
  /** Those that are said in full: all of them the first time, and the deadly ones always. */
  readonly full: readonly Caution[];
  /** Those of which one line is enough. */
  readonly brief: readonly Caution[];
  /** Something deadly is among those said in full. */
  readonly isDeadly: boolean;
};

/**
 * The cautions of a step on a piece at this moment: of its product and of itself, of rules bound to its class and
 * product, and of what was done before and goes on beside it.
 */
export function cautionsOfStep(piece: Piece, step: PlannedStep, moment: Moment): StepCautions {
  const product = productOf(piece, step);
  const others = piece.steps.filter(({ id }) => id !== step.id && isDone(piece, id, null));
  const isKnown = step.skipped || isDone(piece, step.id, null);
  const told: Told[] = [
    ...(product?.cautions ?? []).map((says) => ({
      ...own(says, product?.deadly === true),
      before: others.some((each) => each.product === step.product),
    })),
    ...step.cautions
      .filter((says) => product?.cautions.includes(says) !== true)
      .map((says) => ({
        ...own(says, false),
        before: others.some((each) => each.cautions.includes(says)),
      })),
    ...ofRules(piece, step, moment.rules, others, moment),
    ...partnersFor(piece, step, moment).map((each) => ({ ...each, before: false })),
    ...overCautions(piece, step, moment).map((each) => ({ ...each, before: false })),
    ...[...dangerousMeetings(piece, step, moment), ...neighbourCautions(piece, step, moment)].map(
      (each) => ({ ...each, before: false }),
    ),
  ];
  const all = told.toSorted((a, b) => weight(a) - weight(b));
  const isFull = ({ deadly, ofTheMoment, before }: Told): boolean =>
    deadly || ofTheMoment || !(before || isKnown);
  const full = all.filter(isFull);
  return {
    all,
    full,
    brief: all.filter((each) => !isFull(each)),
    isDeadly: full.some(({ deadly }) => deadly),
  };
}

/** `before`: it was said of another step of this piece that is done. */
type Told = Caution & { readonly before: boolean };

const own = (says: string, isDeadly: boolean): Caution => ({
  id: `own: ${says}`,
  says,
  deadly: isDeadly,
  ofTheMoment: false,
  source: null,
});

const weight = ({ deadly, ofTheMoment }: Caution): number =>
  (deadly ? 0 : 2) + (ofTheMoment ? 0 : 1);

const ofRules = onceAStep(workOutOfRules);

function workOutOfRules(
  piece: Piece,
  step: PlannedStep,
  rules: TradeRules,
  others: readonly PlannedStep[],
  moment: Moment,
): readonly Told[] {
  const lead = leadStanding(piece, rules);
  const said = [...(productOf(piece, step)?.cautions ?? []), ...step.cautions];
  let oursOnBare: boolean | null = null;
  return rules.cautions
    .filter((rule) => fits(rule, piece, step))
    .filter((rule) => !said.some((words) => speaksOf(words, rule.unlessSaid)))
    .filter(
      (rule) =>
        rule.lead === null ||
        (rule.lead === lead && !(oursOnBare ??= isOursOnBare(piece, step, moment))),
    )
    .map(({ id, says, deadly, source, ...rule }) => ({
      id,
      says,
      deadly,
      source,
      ofTheMoment: false,
      before: others.some((each) => fits(rule, piece, each)),
    }));
}

type Fitting = Pick<CautionRule, 'steps' | 'products' | 'words' | 'fumes'>;

function fits(
  { steps, products, words, fumes }: Fitting,
  piece: Piece,
  step: PlannedStep,
): boolean {
  const productClass = productOf(piece, step)?.productClass.toLowerCase();
  return (
    steps.includes(step.stepClass) ||
    (fumes && step.fumes === true) ||
    products.some((each) => each.toLowerCase() === productClass) ||
    speaksOf(step.name, words)
  );
}
