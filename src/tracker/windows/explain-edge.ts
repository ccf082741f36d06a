import type { Instant, Milliseconds } from '../time/index.ts';
import { chooseStamp, latestFinding, placeEdge, type Happenings } from './edges.ts';
import type { Edge, EdgeSense, OwnTime, Span, SpanAir, StampChoice } from './model.ts';

/** What an edge counts from: a stamp, a finding, or the clock. */
export type EdgeRoot =
  | {
      readonly by: 'stamp';
      readonly choice: StampChoice;
      readonly at: Instant;
      /** Never made: the pick-up was taken for it. */
      readonly assumed: boolean;
    }
  | { readonly by: 'check'; readonly finding: 'ready' | 'not yet'; readonly at: Instant }
  | { readonly by: 'clock'; readonly time: string; readonly at: Instant };

/** A span as the label gives it, and as long as it came out in the shop's air. */
export type CountedSpan = {
  readonly span: Span;
  readonly lasts: Milliseconds;
  /** This shop's own time, where it stands in for the label's. */
  readonly own: OwnTime | null;
  /** What of the air counted; null where the air moves nothing. */
  readonly air: SpanAir | null;
};

/** Why an edge lies where it does: what it counts from, and the spans after that. Of several edges the one that decided. */
export type EdgeReason = {
  readonly root: EdgeRoot;
  readonly spans: readonly CountedSpan[];
  readonly at: Instant;
};

/** Null as long as the edge is not known. Agrees with `placeEdge`. */
export function explainEdge(
  edge: Edge,
  happenings: Happenings,
  sense: EdgeSense,
): EdgeReason | null {
  switch (edge.kind) {
    case 'stamp': {
      const stamp = chooseStamp(edge.stamp, happenings);
      if (!stamp.known) return null;
      const { at, assumed } = stamp;
      return counted({ by: 'stamp', choice: edge.stamp, at, assumed }, edge.plus, sense);
    }
    case 'check': {
      const check = latestFinding(happenings);
      if (check?.finding !== edge.finding) return null;
      return counted({ by: 'check', finding: edge.finding, at: check.at }, edge.plus, sense);
    }
    case 'clock': {
      const placed = placeEdge(edge, happenings, sense);
      return placed.known
        ? counted({ by: 'clock', time: edge.time, at: placed.at }, undefined, sense)
        : null;
    }
    case 'beyond': {
      const base = explainEdge(edge.edge, happenings, sense);
      return base === null ? null : lengthened(base, edge.plus, sense);
    }
    case 'earliest':
    case 'latest': {
      const placed = placeEdge(edge, happenings, sense);
      if (!placed.known) return null;
      return (
        edge.of
          .map((each) => explainEdge(each, happenings, sense))
          .find((reason) => reason?.at === placed.at) ?? null
      );
    }
  }
}

function counted(root: EdgeRoot, span: Span | undefined, sense: EdgeSense): EdgeReason {
  const bare: EdgeReason = { root, spans: [], at: root.at };
  return span === undefined ? bare : lengthened(bare, span, sense);
}

function lengthened({ root, spans, at }: EdgeReason, span: Span, sense: EdgeSense): EdgeReason {
  const end = sense.spanEnd(span, at);
  return {
    root,
    spans: [
      ...spans,
      {
        span,
        lasts: end - at,
        own: sense.ownTime?.(span) ?? null,
        air: sense.spanAir?.(span, at) ?? null,
      },
    ],
    at: end,
  };
}
