import type { BenchInMaking } from './bench-in-making.ts';
import type { BenchFact } from './facts.ts';

/** Folds in what is told about shared pots. */
export function foldPotFact(bench: BenchInMaking, fact: BenchFact): void {
  switch (fact.kind) {
    case 'pot-mixed': {
      const { pot: id, letter, product } = fact.body;
      const pot = { id, letter, product, mixedAt: fact.at, washedAt: null };
      bench.pots.set(id, { ...pot, fact: fact.id, washedFact: null });
      return;
    }
    case 'pot-washed': {
      const pot = bench.pots.get(fact.body.pot);
      if (pot === undefined) return;
      const washedAt = Math.max(pot.mixedAt, fact.at);
      bench.pots.set(pot.id, { ...pot, washedAt, washedFact: fact.id });
      return;
    }
    case 'stamp-moved': {
      const { fact: moved, to } = fact.body;
      for (const pot of bench.pots.values()) {
        if (pot.fact === moved)
          bench.pots.set(pot.id, { ...pot, mixedAt: Math.min(to, pot.washedAt ?? to) });
        else if (pot.washedFact === moved)
          bench.pots.set(pot.id, { ...pot, washedAt: Math.max(to, pot.mixedAt) });
      }
      return;
    }
    default:
    // Facts about pieces and work are folded elsewhere.
  }
}
