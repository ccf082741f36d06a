import { holds, unknown, type KnownOfPiece, type Product } from '../../tracker/trade/index.ts';
import type { Problem } from './problem.ts';
import { conditionOf, situations } from './situations.ts';
import { problemAt } from './raw-fields.ts';
import type { ScheduleFile } from './schedule-form.ts';
import { startedBy } from './step-checks.ts';
import type { YamlSource } from './yaml-source.ts';

/** A step that is in where every step that would start its milestone is left out would wait for ever. */
export function needsLeftOut(
  source: YamlSource,
  { steps }: ScheduleFile,
  available: Readonly<Record<string, Product>>,
): readonly Problem[] {
  const conditions = new Map(steps.map((step) => [step.id, conditionOf(step)]));
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

/** `For softwood where old-finish is unknown`; what makes no difference is left out. */
function situationWords({ yearMade, wood, answers }: KnownOfPiece): string {
  const told = [
    ...(wood === null ? [] : [`${wood}wood`]),
    ...(yearMade === null ? [] : [`made ${yearMade}`]),
    ...Object.entries(answers).map(([step, answer]) => `"${answer}" to ${step}`),
  ];
  return told.length === 0 ? `Where all that is ${unknown}` : `For ${told.join(', ')}`;
}
