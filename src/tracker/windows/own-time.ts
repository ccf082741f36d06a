import type { Chemistry } from '../trade/climate.ts';
import type { Edge, EdgeSense, Milestone, OwnTime, Span, WindowRule } from './model.ts';

/** Where a finger or paper tells the truth. Two-part and acid-cured coats can feel hard before they are. */
const tellsByTouch: ReadonlySet<Chemistry> = new Set(['waterborne', 'evaporative', 'oxidative']);
/** Work that spoils nothing if it was a little too early. */
const littleSpoiled: ReadonlySet<Milestone> = new Set(['scuff', 'recoat']);

/** Whether touching a coat of that kind tells how far it is. */
export const touchTells = (chemistry: Chemistry): boolean => tellsByTouch.has(chemistry);

/** Whether checks may teach that a milestone is reached sooner than the label says; never where a gap is forbidden. */
export const mayTeachSooner = (
  milestone: Milestone,
  chemistry: Chemistry,
  hasGap: boolean,
): boolean => littleSpoiled.has(milestone) && touchTells(chemistry) && !hasGap;

/** The label's figure by which a coat's milestone opens, and whether checks may move it. */
export type CoatOpening = {
  readonly milestone: Milestone;
  readonly edge: Extract<Edge, { kind: 'stamp' }>;
  readonly span: Span;
  /** Checks may bring it forward, and not only put it off. */
  readonly maySooner: boolean;
};

/**
 * The opening of a coat that its user's checks may move; null for everything else: what can't be tried (wrapping, cure),
 * glue, chemicals, and coats with a gap in which nothing may go on.
 */
export function movableOpening(rule: WindowRule): CoatOpening | null {
  const { kind, milestone, stretches, notYetAdds } = rule;
  if (kind !== 'coat' || milestone === undefined || notYetAdds === undefined) return null;
  if (stretches.some(({ meaning }) => meaning === 'keep off')) return null;
  const from = stretches.find(({ meaning }) => meaning === 'go')?.from;
  const edge = from === undefined ? null : growingEdge(from);
  const span = edge?.plus;
  if (edge === null || span === undefined || !(span.ms > 0)) return null;
  const maySooner =
    span.learnable === true &&
    span.chemistry !== undefined &&
    mayTeachSooner(milestone, span.chemistry, false);
  return { milestone, edge, span, maySooner };
}

/** The stamp with the figure that may only grow: what an opening hangs on before anything was tried. */
function growingEdge(edge: Edge): Extract<Edge, { kind: 'stamp' }> | null {
  switch (edge.kind) {
    case 'stamp':
      return edge.plus?.may === 'grow' ? edge : null;
    case 'check':
    case 'clock':
      return null;
    case 'beyond':
      return growingEdge(edge.edge);
    case 'earliest':
    case 'latest':
      return edge.of.map(growingEdge).find((each) => each !== null) ?? null;
  }
}

/** The same sense, in which the opening of that rule takes its own time instead of the label's. */
export function senseWithOwnTime(
  sense: EdgeSense,
  rule: WindowRule,
  own: OwnTime | undefined,
): EdgeSense {
  const opening = own === undefined ? null : movableOpening(rule);
  if (own === undefined || opening === null) return sense;
  const { spanEnd, spanAir } = sense;
  const inOwnTime = (span: Span): Span => (span === opening.span ? { ...span, ms: own.ms } : span);
  return {
    ...sense,
    spanEnd: (span, from) => spanEnd(inOwnTime(span), from),
    ...(spanAir === undefined ? {} : { spanAir: (span, from) => spanAir(inOwnTime(span), from) }),
    ownTime: (span) => (span === opening.span ? own : null),
  };
}
