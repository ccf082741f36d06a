import type { Milliseconds } from '../../tracker/time/index.ts';
import type { StampChoice, Stretch, WindowRule } from '../../tracker/windows/index.ts';
import {
  afterwards,
  going,
  grows,
  optional,
  usualDelay,
  waiting,
  withChecks,
  type Surroundings,
} from './stretches.ts';
import type { EndedBy, WindowRow } from './window-form.ts';

/** A window for every wood, or one for each. */
export type WindowsByWood = {
  readonly any: readonly WindowRule[];
  readonly soft: readonly WindowRule[];
  readonly hard: readonly WindowRule[];
};

/** A window with its own stamps; one for each wood where its times differ by wood. */
export function makeWindow(id: string, row: WindowRow, around: Surroundings): WindowsByWood {
  const { opens, closes } = row;
  const isByWood = typeof opens === 'object' || typeof closes === 'object';
  const forWood = (wood: 'soft' | 'hard'): WindowRule =>
    ruleOf(id, row, of(opens, wood), of(closes, wood), around);
  if (isByWood) return { any: [], soft: [forWood('soft')], hard: [forWood('hard')] };
  return { any: [forWood('hard')], soft: [], hard: [] };
}

type ByWood = Milliseconds | { readonly soft: Milliseconds; readonly hard: Milliseconds };
const of = (time: ByWood | undefined, wood: 'soft' | 'hard'): Milliseconds | undefined =>
  typeof time === 'object' ? time[wood] : time;

function ruleOf(
  id: string,
  row: WindowRow,
  opens: Milliseconds | undefined,
  closes: Milliseconds | undefined,
  around: Surroundings,
): WindowRule {
  const isCoat = row.kind === 'coat' || row.kind === 'cure';
  const start: StampChoice = { ...row['starts at'], ...(isCoat ? { assume: true } : {}) };
  const opensFrom = row['opens from'] ?? start;
  const closesFrom = row['closes from'] ?? start;
  const isTried = row['can be tried'] === true;
  // A joint that is still soft can be left in its clamps; one that feels firm waits for the label all the same.
  const isHeldBack = isTried || (row.kind === 'glue' && opens !== undefined);
  const adds = row['not yet adds'] ?? (isHeldBack ? usualDelay(opens ?? 0) : undefined);
  const openAs = { ...around, chemistry: row['opens as'] ?? around.chemistry };
  const closeAs = { ...around, chemistry: row['closes as'] ?? around.chemistry };
  const opened: readonly Stretch[] =
    opens === undefined
      ? [going]
      : [
          waiting,
          {
            from: withChecks(
              { kind: 'stamp', stamp: opensFrom, plus: grows(opens, openAs, false) },
              isTried,
              adds,
            ),
            ...going,
          },
        ];
  return {
    id,
    kind: row.kind,
    verb: row.do,
    // A second round or pass within a step begins its windows anew.
    scope: row.per ?? 'pass',
    begins: start,
    stretches: [...opened, ...afterwards(row, closesFrom, opensFrom, closes, closeAs)],
    closedBy: endOf(row['ended by']),
    ...optional({ milestone: row.milestone, notYetAdds: adds, gear: row.gear }),
  };
}

const endOf = (ending: EndedBy): WindowRule['closedBy'] =>
  ending.by === 'stamp' ? { by: 'stamp', stamp: ending.phrase } : { by: ending.by };
