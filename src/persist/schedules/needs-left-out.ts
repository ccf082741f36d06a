import {
  holds,
  nothingKnown,
  termsOf,
  unknown,
  type Condition,
  type KnownOfPiece,
  type Product,
} from '../../tracker/trade/index.ts';
import { makeCondition } from './piece-form.ts';
import type { Problem } from './problem.ts';
import { problemAt } from './raw-fields.ts';
import type { ScheduleFile, StepForm } from './schedule-form.ts';
import { startedBy } from './step-checks.ts';
import type { YamlSource } from './yaml-source.ts';

/** More situations than this are not tried: a file must not hold up the program. */
const mostSituations = 5000;

/** A step that is in where every step that would start its milestone is left out would wait for ever. */
export function needsLeftOut(
  source: YamlSource,
  { steps }: ScheduleFile,
  available: Readonly<Record<string, Product>>,
): readonly Problem[] {
  const conditions = new Map(
    steps.map((step) => [
      step.id,
      step['only if'] === undefined ? undefined : makeCondition(step['only if']),
    ]),
  );
  return steps.flatMap((step, index) =>
    (step.needs ?? []).flatMap((need, place) => {
      const providers = steps
        .slice(0, index)
        .filter((each) => startedBy(each, available).has(need));
      if (providers.length === 0) return [];
      const own = conditions.get(step.id);
      const others = providers.map(({ id }) => conditions.get(id));
      if (others.includes(undefined)) return [];
      const stuck = situations(steps, [own, ...others]).find(
        (known) => holds(own, known) && others.every((condition) => !holds(condition, known)),
      );
      if (stuck === undefined) return [];
      const names = providers.map(({ id }) => id).join(', ');
      return [
        problemAt(
          source,
          ['steps', index, 'needs', place],
          need,
          'a milestone that a step before it starts for the same pieces',
          {
            says: `${situationWords(stuck)} this step is in, but every step that starts "${need}" is left out: ${names}.`,
            todo: 'Give this step the same "only if", or put in a step that starts it for the other pieces.',
          },
        ),
      ];
    }),
  );
}

/** Everything that may be known of a piece, as far as it makes a difference to these conditions. */
function situations(
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
      [null, ...years.flatMap((year) => [year - 1, year])].map((yearMade) => ({
        ...known,
        yearMade,
      })),
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

/** `For softwood where old-finish is unknown`; what makes no difference is left out. */
function situationWords({ yearMade, wood, answers }: KnownOfPiece): string {
  const told = [
    ...(wood === null ? [] : [`${wood}wood`]),
    ...(yearMade === null ? [] : [`made ${yearMade}`]),
    ...Object.entries(answers).map(([step, answer]) => `"${answer}" to ${step}`),
  ];
  return told.length === 0 ? `Where all that is ${unknown}` : `For ${told.join(', ')}`;
}
