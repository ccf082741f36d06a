import type { Instant } from '../../time/index.ts';
import { stateAt } from '../evaluate.ts';
import type { Edge, EdgeSense, Span, Window } from '../model.ts';

/** How many times as long as their labels say coats take, from the least to the most of them. */
export type DryingPace = { readonly least: number; readonly most: number };

/** What the air of an instant does to the coats that are drying then; null where none is, or air moves none of them. */
export function dryingPaceAt(
  windows: readonly Window[],
  now: Instant,
  { factorAt }: EdgeSense,
): DryingPace | null {
  if (factorAt === undefined) return null;
  const factors = windows
    .filter((window) => window.rule.kind === 'coat' && stateAt(window, now) === 'before')
    .flatMap(({ rule }) => rule.stretches.filter(({ meaning }) => meaning === 'go'))
    .flatMap(({ from }) => (from === undefined ? [] : growingSpans(from)))
    .map((span) => factorAt(span, now));
  return factors.length === 0 ? null : { least: Math.min(...factors), most: Math.max(...factors) };
}

/** The label's figures of an edge that air may lengthen. */
function growingSpans(edge: Edge): readonly Span[] {
  const own = (span: Span | undefined): readonly Span[] =>
    span?.may === 'grow' && span.statedFor !== undefined ? [span] : [];
  switch (edge.kind) {
    case 'stamp':
    case 'check':
      return own(edge.plus);
    case 'clock':
      return [];
    case 'beyond':
      return [...growingSpans(edge.edge), ...own(edge.plus)];
    case 'earliest':
    case 'latest':
      return edge.of.flatMap(growingSpans);
  }
}
