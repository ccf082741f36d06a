import { trialWindow, type Product } from '../../tracker/trade/index.ts';
import type { Milestone } from '../../tracker/windows/index.ts';
import { unknownName, wrong } from './explain-issue.ts';
import { windowsOf } from './make-product.ts';
import type { Problem } from './problem.ts';
import { steps as rawSteps } from './raw-fields.ts';
import type { ScheduleFile, StepForm } from './schedule-form.ts';
import type { YamlSource } from './yaml-source.ts';

/** @param withheld ids of products whose file has problems, by that file */
export function unknownProducts(
  source: YamlSource,
  root: Record<string, unknown>,
  known: readonly string[],
  withheld: ReadonlyMap<string, string>,
): readonly Problem[] {
  return rawSteps(root).flatMap(({ path, step }) => {
    const name = step['product'];
    if (typeof name !== 'string' || known.includes(name)) return [];
    const problem = unknownName(source, [...path, 'product'], name, 'a product', [
      ...known,
      ...withheld.keys(),
    ]);
    const file = withheld.get(name);
    if (file === undefined) return [problem];
    const { nearest: _, ...rest } = problem;
    const says = `"${name}" can't be used because its file has problems.`;
    return [{ ...rest, says, todo: `Mend ${file} first.` }];
  });
}

/** The milestones that a step starts. What is tried on a patch starts none. */
export function startedBy(
  step: StepForm,
  available: Readonly<Record<string, Product>>,
): ReadonlySet<Milestone> {
  const product =
    step.product === undefined || step['try first'] !== undefined
      ? undefined
      : available[step.product];
  const rules = [
    ...(product === undefined ? [] : windowsOf(product)),
    ...Object.values(step.windows ?? {}),
  ];
  return new Set(rules.flatMap(({ milestone }) => milestone ?? []));
}

/** A step that needs a milestone which no step before it can reach would wait for ever. */
export function unmetNeeds(
  source: YamlSource,
  form: ScheduleFile,
  available: Readonly<Record<string, Product>>,
): readonly Problem[] {
  const reachable = new Set<string>();
  const problems: Problem[] = [];
  for (const [index, step] of form.steps.entries()) {
    for (const [place, need] of (step.needs ?? []).entries()) {
      if (reachable.has(need)) continue;
      const problem = wrong(
        source,
        ['steps', index, 'needs', place],
        need,
        'a milestone that a step before it starts',
      );
      problems.push({
        ...problem,
        says: `No step before this one starts "${need}".`,
        todo:
          reachable.size > 0
            ? `Take it out, or need one of: ${[...reachable].join(', ')}.`
            : 'Take it out, or put the step after the one it waits for.',
      });
    }
    for (const milestone of startedBy(step, available)) reachable.add(milestone);
  }
  return problems;
}

/** Windows of one step are told apart by their ids, those of its product included. */
export function doubledWindows(
  source: YamlSource,
  form: ScheduleFile,
  available: Readonly<Record<string, Product>>,
): readonly Problem[] {
  return form.steps.flatMap((step, index) => {
    const product = step.product === undefined ? undefined : available[step.product];
    const taken = new Set([
      ...(product === undefined ? [] : windowsOf(product).map((rule) => rule.id)),
      ...(step['try first'] === undefined ? [] : [trialWindow]),
    ]);
    return Object.keys(step.windows ?? {})
      .filter((id) => taken.has(id))
      .map((id) => ({
        ...wrong(
          source,
          ['steps', index, 'windows', id],
          id,
          'an id that the product has no window for',
        ),
        says:
          id === trialWindow
            ? `A trial has a window "${id}" of its own, in which it is judged.`
            : `The step's product already has a window "${id}".`,
        todo: `Give this one another id, such as ${id}-2.`,
      }));
  });
}
