import { isDone, rulesOf, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import type { Milliseconds } from '../../tracker/time/index.ts';
import type { Edge, Milestone } from '../../tracker/windows/index.ts';
import { labelLength } from '../parts/label-length.ts';

/** `wrap after 72 h`: the label's wait after a step that is still to do. */
export function plannedWait(piece: Piece, step: PlannedStep): string | null {
  const before = piece.steps.slice(0, piece.steps.indexOf(step)).filter((each) => !each.skipped);
  for (const need of step.needs) {
    const from = before.findLast((each) => openingOf(piece, each, need) !== null);
    if (from === undefined || isDone(piece, from.id, null)) continue;
    const wait = openingOf(piece, from, need);
    if (wait !== null) return `${need} after ${labelLength(wait)}`;
  }
  return null;
}

function openingOf(piece: Piece, step: PlannedStep, milestone: Milestone): Milliseconds | null {
  const rule = rulesOf(piece, step).find((each) => each.milestone === milestone);
  const edge = rule?.stretches.find(({ meaning }) => meaning === 'go')?.from;
  return edge === undefined ? null : labelSpan(edge);
}

/** The label's figure in an edge; what checks did to it is not the label's. */
function labelSpan(edge: Edge): Milliseconds | null {
  switch (edge.kind) {
    case 'stamp':
      return edge.plus?.ms ?? null;
    case 'beyond':
      return edge.plus.ms;
    case 'earliest':
    case 'latest':
      return edge.of.map(labelSpan).find((span) => span !== null) ?? null;
    case 'check':
    case 'clock':
      return null;
  }
}
