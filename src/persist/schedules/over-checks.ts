import {
  holds,
  misfitsInSequence,
  type FinishingSchedule,
  type OverTable,
} from '../../tracker/trade/index.ts';
import type { Problem } from './problem.ts';
import { problemAt } from './raw-fields.ts';
import type { ScheduleFile } from './schedule-form.ts';
import { conditionOf, situations } from './situations.ts';
import type { YamlSource } from './yaml-source.ts';

/** Steps of a schedule that put something over what it does not hold on. */
export function overProblems(
  source: YamlSource,
  form: ScheduleFile,
  { steps, products }: FinishingSchedule,
  table: OverTable,
): readonly Problem[] {
  const misfits = branches(form).flatMap((kept) =>
    misfitsInSequence(
      kept.flatMap((index) => steps[index] ?? []),
      products,
      table,
    ).map((misfit) => ({ ...misfit, index: kept[misfit.index] ?? 0 })),
  );
  const first = misfits.filter(
    ({ index }, place) => misfits.findIndex((other) => other.index === index) === place,
  );
  return first.map(({ index, below, above, row }) => {
    const field = form.steps[index]?.product === undefined ? 'class' : 'product';
    const verdict = row.verdict === 'no' ? 'does not go' : `goes only after: ${row.first ?? ''}`;
    return problemAt(
      source,
      ['steps', index, field],
      above,
      `something that goes over ${below} here`,
      {
        says: `${above} over ${below} ${verdict}; ${row.why}.`,
        todo: `Instead: ${row.instead ?? 'try it on a sample board'}.`,
      },
    );
  });
}

/** The sequences that a schedule comes to, each as the places of the steps that are in it: one for every branch. */
function branches({ steps }: ScheduleFile): readonly (readonly number[])[] {
  const conditions = steps.map(conditionOf);
  const kept = situations(steps, conditions).map((known) =>
    steps.map((_, index) => index).filter((index) => holds(conditions[index], known)),
  );
  return [...new Map(kept.map((each) => [each.join(), each])).values()];
}
