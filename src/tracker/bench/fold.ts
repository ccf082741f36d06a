import { inOneFrame, type ClockReading } from './clock-frames.ts';
import type { BenchFact } from './facts.ts';
import { foldImportFact } from './fold-imports.ts';
import { foldPieceFact } from './fold-piece.ts';
import { foldPotFact } from './fold-pot.ts';
import { foldWorkFact } from './fold-work.ts';
import type { BenchInMaking } from './bench-in-making.ts';
import { withRules } from './left-out.ts';
import type { Bench } from './bench.ts';
import { walkTrail } from './trail.ts';

/**
 * Works out the bench from all its facts, in the order in which they were told. Groups that were taken back don't count.
 * Never fails: a fact about something that isn't there changes nothing.
 *
 * @param present what the machine's clock shows now, where it may have been set since the last fact
 * @param before the bench before the last facts: pieces that they didn't touch keep their objects, and with them what
 *   was worked out from them
 */
export function foldBench(
  told: readonly BenchFact[],
  before?: Bench,
  present?: ClockReading,
): Bench {
  const { facts, steps } = inOneFrame(told, present);
  const { trail, groups, withdrawn } = walkTrail(facts);
  const bench: BenchInMaking = {
    pieces: new Map(),
    sessions: new Map(),
    touches: new Map(),
    folding: '',
    timers: new Map(),
    pots: new Map(),
    imports: new Map(),
    lastShut: null,
  };
  for (const fact of facts) {
    if (withdrawn.has(fact.group)) continue;
    bench.folding = fact.id;
    foldPieceFact(bench, fact);
    foldWorkFact(bench, fact);
    foldPotFact(bench, fact);
    foldImportFact(bench, fact);
  }
  for (const [id, piece] of bench.pieces) bench.pieces.set(id, withRules(piece));
  // A clock that was set moves what every piece has.
  if (before?.clockSteps.length === steps.length) keepUntouched(bench, before);
  return {
    pieces: bench.pieces,
    sessions: [...bench.sessions.values()],
    touches: bench.touches,
    timers: [...bench.timers.values()],
    pots: [...bench.pots.values()],
    trail,
    groups,
    lastShut: bench.lastShut,
    clockSteps: steps,
    ...(bench.imports.size === 0 ? {} : { imports: [...bench.imports.values()] }),
  };
}

/** Facts are only ever added, or taken back from the end, so the same count and the same last one are the same facts. */
function keepUntouched(bench: BenchInMaking, before: Bench): void {
  for (const [id, { count, last }] of bench.touches) {
    const earlier = before.touches.get(id);
    const piece = before.pieces.get(id);
    if (piece !== undefined && earlier?.count === count && earlier.last === last)
      bench.pieces.set(id, piece);
  }
}
