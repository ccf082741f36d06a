import type { BenchFact } from './facts.ts';
import { foldPieceFact } from './fold-piece.ts';
import { foldWorkFact } from './fold-work.ts';
import type { Bench, OddTimer, Piece, Session, Shutdown } from './piece.ts';
import { walkTrail } from './trail.ts';

/** The bench while facts are folded in; nobody outside this folder sees it half made. */
export type BenchInMaking = {
  readonly pieces: Map<string, Piece>;
  readonly sessions: Map<string, Session>;
  readonly timers: Map<string, OddTimer>;
  lastShut: Shutdown | null;
  readonly clockSteps: { at: number; byMs: number }[];
};

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
