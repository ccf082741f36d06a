import { day, type Instant, type Milliseconds } from '../time/index.ts';
import type { PingFact } from './facts.ts';
import type { Bench } from './bench.ts';

/** So long every ping stands in the log, whatever became of its piece. */
const keptFor: Milliseconds = 60 * day;

/**
 * Ids of ping facts that nothing can ask for any more: sent two months ago or earlier, and about nothing that is still on
 * the bench. A claim keeps a ping from going out twice for as long as its window is there.
 */
export function needlessPings(
  facts: readonly PingFact[],
  bench: Bench,
  now: Instant,
): ReadonlySet<string> {
  const here = new Set([
    ...[...bench.pieces.values()].filter(({ place }) => place === 'bench').map(({ id }) => id),
    ...bench.timers.filter(({ closedAt }) => closedAt === null).map(({ id }) => id),
    ...bench.pots.filter(({ washedAt }) => washedAt === null).map(({ id }) => id),
  ]);
  const isHere = (ping: string): boolean => ping.split('/').some((part) => here.has(part));
  const gone = new Set<string>();
  for (const fact of facts) {
    if (fact.kind !== 'ping-claimed') {
      if (gone.has(fact.body.claim)) gone.add(fact.id);
    } else if (now - fact.at >= keptFor && !fact.body.pings.some(isHere)) gone.add(fact.id);
  }
  return gone;
}
