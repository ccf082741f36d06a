import type { Bench, Piece, PlannedStep } from '../bench/piece.ts';
import { isDone } from '../bench/progress.ts';
import { inHand } from '../bench/standing.ts';
import type { Instant } from '../time/index.ts';
import type { SurfaceWork } from '../trade/layers.ts';

/** A step on which something was done, as far as that says what lies on a piece and in its wood. */
export type Work = SurfaceWork & {
  readonly step: PlannedStep;
  /** The first and the last record of it. */
  readonly from: Instant;
  readonly at: Instant;
  readonly done: boolean;
  readonly inHand: boolean;
};

export const productOf = (piece: Piece, { product }: Pick<PlannedStep, 'product'>) =>
  product === undefined ? undefined : piece.products[product];

export const surfaceWork = (piece: Piece, step: PlannedStep): SurfaceWork => ({
  name: step.name,
  stepClass: step.stepClass,
  productClass: productOf(piece, step)?.productClass ?? null,
});

/**
 * Everything that was done to a piece, by when it was last recorded. A step that was only picked up counts: nobody can
 * tell what was put on before the first key. What was worked on a skipped step stays done.
 */
export function worksOf(bench: Bench, piece: Piece): readonly Work[] {
  const open = new Set(inHand(bench).map(({ id }) => id));
  const sessions = bench.sessions.filter(({ dropped }) => !dropped);
  return piece.steps
    .flatMap((step): readonly Work[] => {
      const held = sessions.filter(({ targets }) =>
        targets.some((target) => target.piece === piece.id && target.step === step.id),
      );
      const times = [
        ...piece.stamps.filter((each) => each.step === step.id).map(({ at }) => at),
        ...piece.finishes.filter((each) => each.step === step.id).map(({ at }) => at),
        ...held.map(({ start }) => start),
      ];
      if (times.length === 0) return [];
      return [
        {
          ...surfaceWork(piece, step),
          step,
          from: Math.min(...times),
          at: Math.max(...times),
          done: isDone(piece, step.id, null),
          inHand: held.some(({ id }) => open.has(id)),
        },
      ];
    })
    .sort((a, b) => a.at - b.at);
}
