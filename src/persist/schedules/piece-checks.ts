import { countedBy, counted, unknown } from '../../tracker/trade/index.ts';
import { unknownName } from './explain-issue.ts';
import type { Problem } from './problem.ts';
import { problemAt } from './raw-fields.ts';
import type { ScheduleFile, StepForm } from './schedule-form.ts';
import type { Path, YamlSource } from './yaml-source.ts';
import { trialOf } from './piece-form.ts';

/** Where a step names a question of another step, and the answers it names of it. */
type Reference = {
  readonly path: Path;
  readonly step: string;
  readonly answers: readonly string[];
};

/** A condition, or a figure by answer, hangs on the question of a step before it, and on answers that question has. */
export function askedBefore(source: YamlSource, { steps }: ScheduleFile): readonly Problem[] {
  return steps.flatMap((step, index) =>
    referencesIn(step, ['steps', index]).flatMap((reference) =>
      wrongReference(source, steps, index, reference),
    ),
  );
}

function referencesIn(step: StepForm, path: Path): readonly Reference[] {
  const named = (
    answers: Readonly<Record<string, readonly string[]>> | undefined,
    at: Path,
  ): readonly Reference[] =>
    Object.entries(answers ?? {}).map(([id, wanted]) => ({
      path: [...at, id],
      step: id,
      answers: wanted,
    }));
  const { any = [], answers } = step['only if'] ?? {};
  return [
    ...named(answers, [...path, 'only if', 'answers']),
    ...any.flatMap((terms, index) =>
      named(terms.answers, [...path, 'only if', 'any', index, 'answers']),
    ),
    ...Object.entries(step['minutes times'] ?? {}).map(([id, times]) => ({
      path: [...path, 'minutes times', id],
      step: id,
      answers: Object.keys(times),
    })),
  ];
}

function wrongReference(
  source: YamlSource,
  steps: readonly StepForm[],
  index: number,
  { path, step, answers }: Reference,
): readonly Problem[] {
  const before = steps.slice(0, index).filter(({ asks }) => asks !== undefined);
  const asking = before.find(({ id }) => id === step);
  if (asking?.asks === undefined) {
    const ids = before.map(({ id }) => id);
    const problem = unknownName(source, path, step, 'a step before this one that asks', ids);
    const named = steps.find(({ id }) => id === step);
    if (named === undefined) return [problem];
    const says =
      named.asks === undefined
        ? `The step "${step}" asks nothing.`
        : `The step "${step}" asks, but it comes later.`;
    return [{ ...problem, says }];
  }
  const known = Object.keys(asking.asks.answers);
  return answers
    .filter((answer) => answer !== unknown && !known.includes(answer))
    .map((answer) =>
      unknownName(source, path, answer, `an answer of the step "${step}"`, [...known, unknown]),
    );
}

/** A trial is for steps that come after it. */
export function trialsBefore(source: YamlSource, { steps }: ScheduleFile): readonly Problem[] {
  return steps.flatMap((step, index) => {
    const form = step['try first'];
    if (form === undefined) return [];
    const path = ['steps', index, 'try first'];
    const later = steps.slice(index + 1).map(({ id }) => id);
    return trialOf(form)
      .steps.filter((id) => !later.includes(id))
      .map((id) => {
        const problem = unknownName(source, path, id, 'a step after this one', later);
        if (!steps.some((each) => each.id === id)) return problem;
        return { ...problem, says: `"${id}" is not a step after this one: a trial comes first.` };
      });
  });
}

/** The word that stands for no answer can't be one. */
export function reservedAnswers(source: YamlSource, { steps }: ScheduleFile): readonly Problem[] {
  return steps.flatMap((step, index) =>
    step.asks === undefined || !Object.hasOwn(step.asks.answers, unknown)
      ? []
      : [
          problemAt(source, ['steps', index, 'asks', 'answers', unknown], unknown, 'another id', {
            says: `"${unknown}" stands for no answer, so it can't be one.`,
            todo: 'Give the answer another id, such as neither.',
          }),
        ],
  );
}

/** Minutes are for so many of something only where they grow with it. */
export function countedMinutes(source: YamlSource, { steps }: ScheduleFile): readonly Problem[] {
  return steps.flatMap((step, index) =>
    step['minutes for'] === undefined || countedBy(step) !== null
      ? []
      : [
          problemAt(source, ['steps', index, 'minutes for'], step['minutes for'], 'no such field', {
            says: `"minutes for" counts nothing here: these minutes grow with ${step.driver === 'area' ? 'the area' : 'nothing'}.`,
            todo: `Take it out, or give the step a driver of ${inWords(counted)}.`,
          }),
        ],
  );
}

const inWords = (names: readonly string[]): string =>
  `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
