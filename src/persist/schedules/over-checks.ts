import {
  misfitsInSequence,
  type FinishingSchedule,
  type OverTable,
} from '../../tracker/trade/index.ts';
import type { Problem } from './problem.ts';
import { problemAt } from './raw-fields.ts';
import type { ScheduleFile } from './schedule-form.ts';
import type { YamlSource } from './yaml-source.ts';

/** Steps of a schedule that put something over what it does not hold on. */
export function overProblems(
  source: YamlSource,
  form: ScheduleFile,
  { steps, products }: FinishingSchedule,
  table: OverTable,
): readonly Problem[] {
  return misfitsInSequence(steps, products, table).map(({ index, below, above, row }) => {
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
