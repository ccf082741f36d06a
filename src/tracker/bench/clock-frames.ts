import type { Instant, Milliseconds } from '../time/index.ts';
import type { BenchFact } from './facts.ts';

/** A setting of the machine's clock, as facts told before and after it show it. */
export type ClockStep = { readonly at: Instant; readonly byMs: Milliseconds };

/** What the machine's clock shows, and for how long this start of the machine has been running; null where not known. */
export type ClockReading = Pick<BenchFact, 'told' | 'uptimeMs' | 'bootId'>;

/** The clock and the time since the machine started don't run quite alike; a difference beyond this was a setting. */
const noticed: Milliseconds = 2000;

/** By how much the clock was set between two readings of one start of the machine; null where it wasn't, or nobody knows. */
export function clockStep(before: ClockReading, after: ClockReading): Milliseconds | null {
  if (before.uptimeMs === null || after.uptimeMs === null) return null;
  if (before.bootId !== after.bootId) return null;
  const byMs = Math.round(after.told - after.uptimeMs - (before.told - before.uptimeMs));
  return Math.abs(byMs) > noticed ? byMs : null;
}

/**
 * Facts as they would have been told by the clock as it stands now. Each carries the time since the machine started,
 * which no setting of the clock moves: where the clock ran apart from it between two facts, everything told before is
 * moved along, so that what runs keeps its length. Facts of another start of the machine, and those that don't know,
 * stay as they are.
 *
 * @param present what the clock shows now, where nothing may have been told since it was set
 */
export function inOneFrame(
  facts: readonly BenchFact[],
  present?: ClockReading,
): {
  readonly facts: readonly BenchFact[];
  readonly steps: readonly ClockStep[];
} {
  const boots = bootsWithSteps(present === undefined ? facts : [...facts, present]);
  if (boots.size === 0) return { facts, steps: [] };
  const steps: ClockStep[] = [];
  const shifts = new Map<string, Milliseconds>();
  for (const ofBoot of boots.values()) {
    // Not in the order of telling: what came back from the history stands last.
    const ordered = ofBoot.toSorted((a, b) => a.upMs - b.upMs);
    let shift = 0;
    for (const [index, { fact, offset }] of [...ordered.entries()].reverse()) {
      const next = ordered[index + 1];
      const byMs = next === undefined ? 0 : next.offset - offset;
      if (next !== undefined && Math.abs(byMs) > noticed) {
        steps.push({ at: next.fact.told, byMs: Math.round(byMs) });
        shift += Math.round(byMs);
      }
      if (shift !== 0 && 'id' in fact) shifts.set(fact.id, shift);
    }
  }
  return {
    facts: facts.map((fact) => moved(fact, shifts.get(fact.id) ?? 0)),
    steps: steps.toSorted((a, b) => a.at - b.at),
  };
}

type Placed = {
  readonly fact: BenchFact | ClockReading;
  readonly upMs: Milliseconds;
  readonly offset: number;
};

/** Nearly always there are none: that is found out in one pass that keeps nothing. */
function bootsWithSteps(
  facts: readonly (BenchFact | ClockReading)[],
): ReadonlyMap<string, readonly Placed[]> {
  const offsets = new Map<string, { least: number; most: number }>();
  for (const { bootId, uptimeMs, told } of facts) {
    if (bootId === null || uptimeMs === null) continue;
    const offset = told - uptimeMs;
    const known = offsets.get(bootId);
    if (known === undefined) offsets.set(bootId, { least: offset, most: offset });
    else {
      known.least = Math.min(known.least, offset);
      known.most = Math.max(known.most, offset);
    }
  }
  const boots = new Map<string, Placed[]>();
  for (const [bootId, { least, most }] of offsets)
    if (most - least > noticed) boots.set(bootId, []);
  if (boots.size === 0) return boots;
  for (const fact of facts) {
    const { bootId, uptimeMs, told } = fact;
    if (bootId === null || uptimeMs === null) continue;
    boots.get(bootId)?.push({ fact, upMs: uptimeMs, offset: told - uptimeMs });
  }
  return boots;
}

/** Every instant that has been; a day, and the hour at which somebody will be back, are meant by the clock of then. */
function moved(fact: BenchFact, by: Milliseconds): BenchFact {
  if (by === 0) return fact;
  const head = { at: fact.at + by, told: fact.told + by };
  switch (fact.kind) {
    case 'stamp-moved':
      return { ...fact, ...head, body: { ...fact.body, to: fact.body.to + by } };
    case 'session-corrected': {
      const { start, end } = fact.body;
      const body = { ...fact.body, start: start + by, end: end === null ? null : end + by };
      return { ...fact, ...head, body };
    }
    default:
      return { ...fact, ...head };
  }
}
