import type { Instant } from '../time/index.ts';
import type { BenchFact } from './facts.ts';
import type { Trail } from './bench.ts';
import { recalledFacts } from './recalled.ts';

type Walk = {
  readonly trail: Trail;
  readonly groups: ReadonlyMap<string, readonly BenchFact[]>;
  readonly withdrawn: ReadonlySet<string>;
};

/** Whether a fact came from the person's hand and so can be taken back. */
const isMadeByHand = (fact: BenchFact): boolean =>
  fact.by === 'person' && fact.kind !== 'group-withdrawn' && fact.kind !== 'group-restored';

/**
 * Follows taking back and bringing back, last in first out, through all facts. A new deed after a taking back ends what
 * could be brought back. What came back from the history with a piece is no new deed: its groups take the places that
 * they had when they were told.
 */
export function walkTrail(facts: readonly BenchFact[]): Walk {
  const recalled = recalledFacts(facts);
  const done: string[] = [];
  let takenBack: string[] = [];
  const groups = new Map<string, BenchFact[]>();
  const withdrawn = new Set<string>();
  /** Puts a group last, or where it was when it was told. */
  const putDone = (group: string, isRecalled: boolean): void => {
    done.splice(isRecalled ? placeByTelling(group, done, groups) : done.length, 0, group);
  };
  for (const fact of facts) {
    const isRecalled = recalled.has(fact.id);
    if (fact.kind === 'group-withdrawn') {
      const group = fact.body.withdrawn;
      if (!takeOut(done, group, isRecalled)) continue;
      takenBack.push(group);
      withdrawn.add(group);
    } else if (fact.kind === 'group-restored') {
      const group = fact.body.restored;
      if (!takeOut(takenBack, group, isRecalled)) continue;
      putDone(group, isRecalled);
      withdrawn.delete(group);
    } else if (isMadeByHand(fact)) {
      const group = groups.get(fact.group);
      if (group !== undefined) {
        group.push(fact);
        continue;
      }
      groups.set(fact.group, [fact]);
      putDone(fact.group, isRecalled);
      if (!isRecalled) takenBack = [];
    }
  }
  return { trail: { done, takenBack }, groups, withdrawn };
}

/** Takes a group off the end of a list; one that was recalled from wherever it is now. @returns whether it was there */
function takeOut(list: string[], group: string, isRecalled: boolean): boolean {
  const at = list.lastIndexOf(group);
  if (at < 0 || (at !== list.length - 1 && !isRecalled)) return false;
  list.splice(at, 1);
  return true;
}

/** Where a group belongs among those that were told before and after it. */
function placeByTelling(
  group: string,
  done: readonly string[],
  groups: ReadonlyMap<string, readonly BenchFact[]>,
): number {
  const toldAt = (each: string): Instant => groups.get(each)?.[0]?.told ?? 0;
  const later = done.findIndex((each) => toldAt(each) > toldAt(group));
  return later < 0 ? done.length : later;
}
