import type { Instant, Milliseconds } from '../../time/index.ts';
import type { EdgeSense, Window } from '../../windows/model.ts';
import type { Bench } from '../bench.ts';
import type { Piece } from '../piece.ts';
import { alikeSteps } from './alike-steps.ts';
import { matchDifferences, type MatchDifference } from './differences.ts';
import { dwellsOf } from './dwells.ts';

/** The dwell of a partner, to be met on this piece. */
export type DwellTarget = {
  readonly partner: Piece;
  readonly ms: Milliseconds;
  readonly at: Instant;
  /** The label ends it before that: the label comes first. */
  readonly pastLabel: boolean;
};

export type MatchFinding = {
  /** As it was called when it was told. */
  readonly name: string;
  /** Null where it is not among the pieces at hand. */
  readonly partner: Piece | null;
  readonly differences: readonly MatchDifference[];
};

/** What a piece should match, and in what they differ so far, in the order in which it was told. */
export const matchFindings = (
  bench: Bench,
  piece: Piece,
  sense: EdgeSense,
): readonly MatchFinding[] =>
  piece.partners.map(({ piece: id, name }) => {
    const partner = bench.pieces.get(id) ?? null;
    if (partner === null || partner.place === 'removed')
      return { name, partner: null, differences: [] };
    return {
      name: partner.name,
      partner,
      differences: matchDifferences(bench, piece, partner, sense),
    };
  });

/** While a dwell runs on a piece: how long the same stood on the first partner that is through with it. */
export function dwellTarget(
  bench: Bench,
  piece: Piece,
  window: Window,
  now: Instant,
  sense: EdgeSense,
): DwellTarget | null {
  const { rule, subject, begunAt, closedAt, stretches } = window;
  if (rule.kind !== 'chemical' || (closedAt !== null && closedAt <= now)) return null;
  for (const { piece: id } of piece.partners) {
    const partner = bench.pieces.get(id);
    if (partner === undefined || partner.place === 'removed') continue;
    const there = alikeSteps(piece, partner).find(({ here }) => here?.id === subject.stepId)?.there;
    if (there === null || there === undefined) continue;
    const dwell = dwellsOf(bench, partner, there, sense).find(
      (each) => each.rule === rule.id && each.pass === subject.pass,
    );
    if (dwell === undefined) continue;
    const at = begunAt + dwell.ms;
    const lost = stretches.find(
      ({ loss, meaning }) => loss !== 'costs nothing' || meaning === 'keep off',
    );
    return { partner, ms: dwell.ms, at, pastLabel: lost !== undefined && at > lost.begins };
  }
  return null;
}
