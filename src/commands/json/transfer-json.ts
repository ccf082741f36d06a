import type { Exported } from '../../persist/transfer/index.ts';
import type { TransferJson } from '../json-shapes/index.ts';

/** What an exported store holds, counted. */
export const transferHolds = ({
  bench,
  conditions,
  pings,
  years,
  own,
}: Exported): TransferJson['holds'] => ({
  benchFacts: bench.length,
  historyFacts: [...years.values()].flat().length,
  readings: conditions.length,
  pingFacts: pings.length,
  years: [...years.keys()],
  schedules: [...own.keys()],
});

export function transferWords(exported: Exported): string {
  const { benchFacts, historyFacts, readings, years, schedules } = transferHolds(exported);
  return [
    counted(benchFacts, 'fact', 'of the bench'),
    ...(years.length === 0
      ? []
      : [counted(historyFacts, 'fact', `of ${counted(years.length, 'year')} gone by`)]),
    counted(readings, 'reading'),
    ...(schedules.length === 0
      ? []
      : [counted(schedules.length, 'file', 'of schedules and products')]),
  ].join(', ');
}

const counted = (count: number, what: string, more = ''): string =>
  `${count} ${what}${count === 1 ? '' : 's'}${more === '' ? '' : ` ${more}`}`;
