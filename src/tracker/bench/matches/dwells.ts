import type { Milliseconds } from '../../time/index.ts';
import type { EdgeSense, Window } from '../../windows/model.ts';
import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { windowsOf } from '../piece-windows.ts';

/** How long something stood on a step before it was followed up. */
export type Dwell = {
  readonly rule: string;
  readonly pass: number;
  /** What stood: A, or nothing where a step puts on one thing. */
  readonly agent: string | null;
  /** The mean over its sections and parts. */
  readonly ms: Milliseconds;
};

const isOver = ({ rule, closedAt }: Window): boolean =>
  rule.kind === 'chemical' && rule.closedBy.by === 'stamp' && closedAt !== null;

/** The dwells of a step that are over. */
export function dwellsOf(
  bench: Bench,
  piece: Piece,
  step: PlannedStep,
  sense: EdgeSense,
): readonly Dwell[] {
  const groups = new Map<string, Window[]>();
  for (const window of windowsOf(bench, piece, sense)) {
    if (window.subject.stepId !== step.id || !isOver(window)) continue;
    const key = `${window.rule.id}/${window.subject.pass}`;
    groups.set(key, [...(groups.get(key) ?? []), window]);
  }
  return [...groups.values()].flatMap((windows) => {
    const [first] = windows;
    if (first === undefined) return [];
    const lengths = windows.map(({ begunAt, closedAt }) =>
      Math.max(0, (closedAt ?? begunAt) - begunAt),
    );
    return [
      {
        rule: first.rule.id,
        pass: first.subject.pass,
        agent: first.rule.begins.agent ?? null,
        ms: lengths.reduce((sum, ms) => sum + ms, 0) / lengths.length,
      },
    ];
  });
}
