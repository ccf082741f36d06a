import type { BenchFact } from './facts.ts';
import { factsOfPiece } from './facts-of-piece.ts';

/**
 * The facts that came back from the history with a piece: told long ago, and appended in one go right before the piece
 * was put back. Everything else lies in the order in which it was told.
 */
export function recalledFacts(facts: readonly BenchFact[]): ReadonlySet<string> {
  const found = new Set<string>();
  for (const [end, fact] of facts.entries()) {
    if (fact.kind !== 'piece-put-back') continue;
    const { piece } = fact.body;
    const begin = facts.findIndex(
      (each) => each.kind === 'piece-added' && each.body.piece === piece,
    );
    const [first, before] = [facts[begin], facts[begin - 1]];
    if (first === undefined || before === undefined || first.told >= before.told) continue;
    const run = facts.slice(begin, end);
    if (factsOfPiece(run, piece).facts.length === run.length)
      for (const { id } of run) found.add(id);
  }
  return found;
}
