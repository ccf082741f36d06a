import type { Expectation } from '../bench/facts.ts';
import type { Piece } from '../bench/piece.ts';
import {
  finishedAt,
  meanChance,
  type FinishedHours,
  type Held,
  type Verdict,
} from '../estimate/index.ts';

/** A finished piece: the range that its steps were claimed to take together, and what they took. Minutes of hands. */
export type PieceOutcome = {
  readonly piece: Piece;
  readonly expected: Expectation;
  readonly minutes: number;
  readonly verdict: Verdict;
  /** Steps that were done and timed, of those that were done. */
  readonly timed: number;
  readonly done: number;
};

export type PieceOutcomes = { readonly pieces: readonly PieceOutcome[]; readonly held: Held };

/**
 * Past ranges and what then happened, the newest first. A step's range is the one stored when it was finished, never one
 * that was worked out since; hours from elsewhere had none and are left out.
 */
export function pieceOutcomes({ pieces }: Pick<FinishedHours, 'pieces'>): PieceOutcomes {
  const outcomes = pieces
    .flatMap(({ piece, done, steps, imported }): PieceOutcome[] => {
      if (done === null || imported === true) return [];
      const finished = steps.filter(({ state }) => state === 'done');
      const timed = finished.filter(({ minutes }) => minutes !== null).length;
      return [{ piece, ...done, timed, done: finished.length }];
    })
    .sort((a, b) => finishedAt(b.piece) - finishedAt(a.piece));
  return {
    pieces: outcomes,
    held: {
      held: outcomes.filter(({ verdict }) => verdict === 'inside').length,
      of: outcomes.length,
      claimed: meanChance(outcomes.map(({ expected }) => expected.chance)),
    },
  };
}
