import type { Instant } from '../time/index.ts';
import type { Edge, EdgeSense, StampChoice } from './model.ts';

/** A stamp as windows see it: already narrowed to one subject (step, part, pass, section). */
export type SubjectStamp = {
  readonly event: string;
  readonly agent: string | null;
  readonly at: Instant;
  readonly fact: string;
};

export type SubjectCheck = {
  readonly finding: 'ready' | 'not yet' | 'trouble';
  readonly at: Instant;
  readonly fact: string;
};

/** What is taken for a first stroke that was never stamped; `pressed` where a key told it in another way. */
export type StandIn = { readonly at: Instant; readonly fact: string; readonly pressed?: true };

/** Everything about one subject that its edges can hang on. */
export type Happenings = {
  readonly stamps: readonly SubjectStamp[];
  readonly checks: readonly SubjectCheck[];
  /** For stamps that were never made: when the finished step was picked up, or its first section put on. */
  readonly assumedStart: StandIn | null;
};

/** Where an edge lies and which fact put it there. `by: 'nothing'` marks a check that was never made: it moves nothing. */
export type Placed =
  | { readonly known: true; readonly at: Instant; readonly fact: string; readonly assumed: boolean }
  | { readonly known: false; readonly by: 'stamp' | 'nothing' };

/** Finds the chosen stamp, or its assumed stand-in. */
export function chooseStamp(choice: StampChoice, happenings: Happenings): Placed {
  const found = happenings.stamps.filter(
    (stamp, index) =>
      choice.events.some((event) => event === stamp.event) &&
      (choice.agent === undefined || choice.agent === stamp.agent) &&
      !isOver(choice, stamp, happenings.stamps.slice(index + 1)),
  );
  // Order is by instant, not by telling: a stamp moved earlier may become the first.
  const chosen = found.reduce<SubjectStamp | null>((best, stamp) => {
    if (best === null) return stamp;
    const isEarlier = stamp.at < best.at;
    return (choice.which === 'first') === isEarlier ? stamp : best;
  }, null);
  if (chosen) return { known: true, at: chosen.at, fact: chosen.fact, assumed: false };
  if (choice.assume === true && happenings.assumedStart) {
    const { at, fact, pressed } = happenings.assumedStart;
    return { known: true, at, fact, assumed: pressed !== true };
  }
  return { known: false, by: choice.until === undefined ? 'stamp' : 'nothing' };
}

/** Whether what lasts until another stamp has been ended by one that was told after it. */
const isOver = (
  { until }: StampChoice,
  { at }: SubjectStamp,
  later: readonly SubjectStamp[],
): boolean =>
  until !== undefined &&
  later.some((stamp) => stamp.at >= at && until.some((event) => event === stamp.event));

/**
 * The check that counts. A later finding takes the place of an earlier one: after "ready" the last "not yet" no longer
 * holds back, and the reverse. Trouble says nothing about time.
 */
export const latestFinding = (happenings: Happenings): SubjectCheck | undefined =>
  happenings.checks.findLast((check) => check.finding !== 'trouble');

/** Works out where an edge lies. Unknown as long as a stamp it needs has not been made. */
export function placeEdge(edge: Edge, happenings: Happenings, sense: EdgeSense): Placed {
  switch (edge.kind) {
    case 'stamp': {
      const stamp = chooseStamp(edge.stamp, happenings);
      if (!stamp.known || edge.plus === undefined) return stamp;
      return { ...stamp, at: sense.spanEnd(edge.plus, stamp.at) };
    }
    case 'check': {
      const check = latestFinding(happenings);
      if (check?.finding !== edge.finding) return { known: false, by: 'nothing' };
      const at = edge.plus === undefined ? check.at : sense.spanEnd(edge.plus, check.at);
      return { known: true, at, fact: check.fact, assumed: false };
    }
    case 'clock': {
      const stamp = chooseStamp(edge.after, happenings);
      return stamp.known ? { ...stamp, at: sense.nextClock(stamp.at, edge.time) } : stamp;
    }
    case 'beyond': {
      const base = placeEdge(edge.edge, happenings, sense);
      return base.known ? { ...base, at: sense.spanEnd(edge.plus, base.at) } : base;
    }
    case 'earliest': {
      const known = placeAll(edge.of, happenings, sense).filter((placed) => placed.known);
      return known.reduce<Placed>(
        (best, placed) => (!best.known || placed.at < best.at ? placed : best),
        {
          known: false,
          by: 'stamp',
        },
      );
    }
    case 'latest': {
      const all = placeAll(edge.of, happenings, sense);
      const missing = all.find((placed) => !placed.known && placed.by === 'stamp');
      if (missing) return missing;
      return all.reduce<Placed>(
        (best, placed) => (placed.known && (!best.known || placed.at > best.at) ? placed : best),
        { known: false, by: 'nothing' },
      );
    }
  }
}

const placeAll = (
  edges: readonly Edge[],
  happenings: Happenings,
  sense: EdgeSense,
): readonly Placed[] => edges.map((edge) => placeEdge(edge, happenings, sense));
