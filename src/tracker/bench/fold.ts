import type { BenchFact } from './facts.ts';
import { foldPieceFact } from './fold-piece.ts';
import { foldWorkFact } from './fold-work.ts';
import type { BenchInMaking } from './bench-in-making.ts';
import type { Bench } from './piece.ts';
import { walkTrail } from './trail.ts';

/**
 * Works out the bench from all its facts, in the order in which they were told. Groups that were taken back don't count.
 * Never fails: a fact about something that isn't there changes nothing.
 */
export function foldBench(facts: readonly BenchFact[]): Bench {
  const { trail, groups, withdrawn } = walkTrail(facts);
  const bench: BenchInMaking = {
    pieces: new Map(),
    sessions: new Map(),
    timers: new Map(),
    lastShut: null,
    clockSteps: [],
  };
  for (const fact of facts) {
    if (withdrawn.has(fact.group)) continue;
    foldPieceFact(bench, fact);
    foldWorkFact(bench, fact);
  }
  return {
    pieces: bench.pieces,
    sessions: [...bench.sessions.values()],
    timers: [...bench.timers.values()],
    trail,
    groups,
    lastShut: bench.lastShut,
    clockSteps: bench.clockSteps,
  };
}
