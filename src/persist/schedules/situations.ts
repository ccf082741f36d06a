import {
  nothingKnown,
  termsOf,
  type Condition,
  type KnownOfPiece,
} from '../../tracker/trade/index.ts';
import { makeCondition } from './piece-form.ts';
import type { StepForm } from './schedule-form.ts';

/** More situations than this are not tried: a file must not hold up the program. */
const mostSituations = 5000;

export const conditionOf = (step: StepForm): Condition | undefined =>
  step['only if'] === undefined ? undefined : makeCondition(step['only if']);

/** Everything that may be known of a piece, as far as it makes a difference to these conditions. */
export function situations(
  steps: readonly StepForm[],
  conditions: readonly (Condition | undefined)[],
): readonly KnownOfPiece[] {
  const terms = conditions.flatMap((condition) =>
    condition === undefined ? [] : termsOf(condition),
  );
  const years = [
    ...new Set(
      terms.flatMap(({ madeBefore = [], madeSince = [] }) => [madeBefore, madeSince].flat()),
    ),
  ];
  const asked = [...new Set(terms.flatMap(({ answers = {} }) => Object.keys(answers)))];
  let all: readonly KnownOfPiece[] = [nothingKnown];
  if (years.length > 0)
    all = all.flatMap((known) =>
      // A year that nobody knows counts as before all of them.
      [null, ...years].map((yearMade) => ({ ...known, yearMade })),
    );
  if (terms.some(({ wood }) => wood !== undefined))
    all = all.flatMap((known) =>
      ([null, 'soft', 'hard'] as const).map((wood) => ({ ...known, wood })),
    );
  for (const id of asked) {
    const answers = Object.keys(steps.find((step) => step.id === id)?.asks?.answers ?? {});
    if (all.length * (answers.length + 1) > mostSituations) break;
    all = all.flatMap((known) => [
      known,
      ...answers.map((answer) => ({ ...known, answers: { ...known.answers, [id]: answer } })),
    ]);
  }
  return all;
}
