import type { Piece } from '../bench/piece.ts';
import type { ComparedStep, FinishedHours } from '../estimate/index.ts';
import type { StepClass } from '../trade/schedule.ts';

/** A step class that took more than was estimated, over all finished pieces. */
export type CostlyClass = {
  readonly stepClass: StepClass;
  /** Minutes beyond the estimates, what went faster counted off. */
  readonly over: number;
  readonly pieces: number;
  /** The piece that more than half of it came from; null where none did. */
  readonly mostly: Piece | null;
};

/** Minutes beyond the estimate below which nothing is told. */
const worthTelling = 5;

/** The step classes that cost most against their estimates, the worst first. */
export const costliest = (
  { whole }: Pick<FinishedHours, 'whole'>,
  most = 3,
): readonly CostlyClass[] =>
  [...Map.groupBy(whole.steps, ({ step }) => step.stepClass)]
    .map(([stepClass, steps]) => costOf(stepClass, steps))
    .filter(({ over }) => over >= worthTelling)
    .sort((a, b) => b.over - a.over || (a.stepClass < b.stepClass ? -1 : 1))
    .slice(0, most);

function costOf(stepClass: StepClass, steps: readonly ComparedStep[]): CostlyClass {
  const byPiece = [...Map.groupBy(steps, ({ piece }) => piece.id).values()].map((own) => ({
    piece: own[0]?.piece ?? null,
    over: own.reduce((sum, { minutes, expected }) => sum + minutes - expected.minutes, 0),
  }));
  const over = byPiece.reduce((sum, each) => sum + each.over, 0);
  const worst = byPiece.reduce((a, b) => (b.over > a.over ? b : a));
  return {
    stepClass,
    over,
    pieces: byPiece.length,
    mostly: worst.over > over / 2 ? worst.piece : null,
  };
}
