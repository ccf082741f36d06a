import type { FactStore } from '../persist/index.ts';
import { factsOfPiece, type BenchFact } from '../tracker/bench/index.ts';

/** The history of all years. A year that can't be read is told and left out. */
export function readHistories(store: FactStore): {
  readonly facts: readonly BenchFact[];
  readonly problems: readonly string[];
} {
  const facts = new Map<string, BenchFact>();
  const problems: string[] = [];
  for (const year of store.historyYears()) {
    const history = store.readHistory(year);
    // A piece that came back and left again stands in two years; each of its facts counts once.
    if (history.ok) for (const fact of history.value.facts) facts.set(fact.id, fact);
    else problems.push(`${history.problem.says} ${history.problem.todo}`);
  }
  return { facts: [...facts.values()], problems };
}

/** The facts of a piece that lies in the history: what must be on the bench again for it to be put back. */
export const recallPiece = (store: FactStore, piece: string): readonly BenchFact[] =>
  factsOfPiece(readHistories(store).facts, piece).facts;
