import type { BenchFact } from './facts.ts';
import type { Trail } from './piece.ts';

type Walk = {
  readonly trail: Trail;
  readonly groups: ReadonlyMap<string, readonly BenchFact[]>;
  readonly withdrawn: ReadonlySet<string>;
};

/** Whether a fact came from the person's hand and so can be taken back. */
const madeByHand = (fact: BenchFact): boolean =>
  fact.by === 'person' && fact.kind !== 'group-withdrawn' && fact.kind !== 'group-restored';

/**
 * Follows taking back and bringing back, last in first out, through all facts.
 * A new deed after a taking back ends what could be brought back.
 */
export function walkTrail(facts: readonly BenchFact[]): Walk {
  const done: string[] = [];
  let takenBack: string[] = [];
  const groups = new Map<string, BenchFact[]>();
  const withdrawn = new Set<string>();
  for (const fact of facts) {
    if (fact.kind === 'group-withdrawn') {
      if (done.at(-1) === fact.body.withdrawn) {
        done.pop();
        takenBack.push(fact.body.withdrawn);
        withdrawn.add(fact.body.withdrawn);
      }
    } else if (fact.kind === 'group-restored') {
      if (takenBack.at(-1) === fact.body.restored) {
        takenBack.pop();
        done.push(fact.body.restored);
        withdrawn.delete(fact.body.restored);
      }
    } else if (madeByHand(fact)) {
      const group = groups.get(fact.group);
      if (group) {
        group.push(fact);
      } else {
        groups.set(fact.group, [fact]);
        done.push(fact.group);
        takenBack = [];
      }
    }
  }
  return { trail: { done, takenBack }, groups, withdrawn };
}
