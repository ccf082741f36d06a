import { plainStep, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import {
  gritIn,
  stepClasses,
  usualStep,
  type Step,
  type StepClass,
} from '../../tracker/trade/index.ts';
import type { PickItem } from '../parts/pick-page.ts';

/** Step classes to pick from, those that the name speaks of first. */
export function classItems(name: string): readonly PickItem[] {
  const words = wordsIn(name);
  const isNamed = (stepClass: StepClass): boolean =>
    wordsIn(stepClass).some((part) =>
      words.some((word) => word.includes(part) || part.includes(word)),
    );
  const ordered = [
    ...stepClasses.filter(isNamed),
    ...stepClasses.filter((stepClass) => !isNamed(stepClass)),
  ];
  return ordered.map((stepClass) => ({ label: stepClass, value: stepClass }));
}

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{Letter}]+/u)
    .filter((word) => word.length >= 4);

export const isStepClass = (value: string): value is StepClass =>
  stepClasses.some((stepClass) => stepClass === value);

export type Improvised = {
  readonly step: Omit<Step, 'id'>;
  /** The step of the piece after which it was made, if there is one of its class. */
  readonly like: PlannedStep | null;
};

/**
 * A step that no schedule has: with minutes, product and windows as the last step of its class before that place on the
 * piece, or as any other of its class; else with what such work usually takes.
 */
export function improvise(
  piece: Piece,
  name: string,
  stepClass: StepClass,
  before: string | null,
): Improvised {
  const place = piece.steps.findIndex(({ id }) => id === before);
  const earlier = place < 0 ? piece.steps : piece.steps.slice(0, place);
  const isAlike = (step: PlannedStep): boolean => step.stepClass === stepClass;
  const like = earlier.findLast(isAlike) ?? piece.steps.find(isAlike) ?? null;
  if (like === null) return { step: usualStep(name, stepClass), like };
  const { grit: _, ...sample } = plainStep(like);
  const grit = sample.dusty === true ? gritIn(name) : null;
  return { step: { ...sample, name, ...(grit === null ? {} : { grit }) }, like };
}
