import type { Bench } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { isDone } from '../bench/progress.ts';
import { sessionsShared } from '../bench/sorted-piece.ts';
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

/** What a step puts on; undefined where it puts on nothing, or the piece carries no such product. */
export const productOf = (piece: Piece, { product }: Pick<PlannedStep, 'product'>) =>
  product === undefined ? undefined : piece.products[product];

/** What is tried on a patch or a board covers nothing of the piece. */
export const surfaceWork = (piece: Piece, step: PlannedStep): SurfaceWork =>
  step.trialFor === undefined
    ? {
        name: step.name,
        stepClass: step.stepClass,
        productClass: productOf(piece, step)?.productClass ?? null,
      }
    : { name: step.name, stepClass: 'other', productClass: null };

const knownWorks = new WeakMap<Piece, readonly Work[]>();

/**
 * Everything that was done to a piece, by when it was last recorded. A step that was only picked up counts: nobody can
 * tell what was put on before the first key. What was worked on a skipped step stays done.
 * Worked out once, as windows are: folding keeps a piece's object just as long as no fact touches it or its sessions.
 */
export function worksOf(bench: Bench, piece: Piece): readonly Work[] {
  const before = knownWorks.get(piece);
  if (before !== undefined) return before;
  const works = workOutWorks(bench, piece);
  knownWorks.set(piece, works);
  return works;
}

function workOutWorks(bench: Bench, piece: Piece): readonly Work[] {
  const sessions = sessionsShared(bench.sessions, piece.id).filter(({ dropped }) => !dropped);
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
          inHand: held.some(({ end }) => end === null),
        },
      ];
    })
    .sort((a, b) => a.at - b.at);
}
