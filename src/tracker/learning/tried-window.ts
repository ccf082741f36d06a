import { coatWeightOf } from '../bench/coat-weight.ts';
import type { CoatWeight } from '../bench/facts.ts';
import { happeningsOf } from '../bench/happenings.ts';
import type { Piece } from '../bench/piece.ts';
import { countsFor } from '../bench/progress.ts';
import { rulesOf, type SortedPiece } from '../bench/sorted-piece.ts';
import type { Instant } from '../time/index.ts';
import type { LateCause } from '../trade/late-causes.ts';
import type { Product } from '../trade/schedule.ts';
import { chooseStamp } from '../windows/edges.ts';
import { movableOpening, type CoatOpening } from '../windows/own-time.ts';

/** What was told of a coat that says nothing of others. */
export type KeptOut = 'trouble' | Exclude<CoatWeight, 'normal'> | LateCause;

/** A coat that was tried for a milestone, and why it says nothing of others; null where it does. */
export type TriedWindow = {
  readonly product: Product;
  readonly opening: CoatOpening;
  readonly strokeAt: Instant;
  readonly lastNotYet: { readonly at: Instant } | undefined;
  readonly ready: { readonly at: Instant } | undefined;
  readonly keptOut: KeptOut | null;
};

/** Null where the window is no coat's, or was not tried. */
export function triedWindow(sorted: SortedPiece, key: string): TriedWindow | null {
  const { piece } = sorted;
  const first = piece.checks.find(({ window }) => window === key);
  const step = piece.steps.find(({ id }) => id === first?.step);
  const product = step?.product === undefined ? undefined : piece.products[step.product];
  const [, , ruleId, , pass] = key.split('/');
  if (first === undefined || step === undefined || product === undefined) return null;
  const rule = rulesOf(piece, step).find(({ id }) => id === ruleId);
  const opening = rule === undefined ? null : movableOpening(rule);
  if (rule === undefined || opening === null) return null;
  const subject = {
    pieceId: piece.id,
    stepId: step.id,
    partId: first.part,
    pass: Number(pass),
    section: null,
  };
  const happenings = happeningsOf(sorted, step, { key, rule, subject });
  const stroke = chooseStamp(opening.edge.stamp, happenings);
  if (!stroke.known || stroke.assumed) return null;
  const checks = happenings.checks
    .filter(({ at }) => at > stroke.at)
    .toSorted((a, b) => a.at - b.at);
  const lastNotYet = checks.findLast(({ finding }) => finding === 'not yet');
  const ready = checks.find(
    ({ finding, at }) => finding === 'ready' && at > (lastNotYet?.at ?? stroke.at),
  );
  const keptOut = whyKeptOut(piece, step.id, first.part, Number(pass));
  return { product, opening, strokeAt: stroke.at, lastNotYet, ready, keptOut };
}

/**
 * A coat that says nothing of others: told to be thin or heavy, one that showed trouble, or so late that somebody looked
 * for a reason and found one.
 */
function whyKeptOut(piece: Piece, step: string, part: string | null, pass: number): KeptOut | null {
  const weight = coatWeightOf(piece, step, part, pass);
  if (weight !== null && weight !== 'normal') return weight;
  const ofCoat = piece.checks.filter(
    (check) => check.step === step && (part === null || countsFor(check.part, part)),
  );
  if (ofCoat.some(({ finding }) => finding === 'trouble')) return 'trouble';
  const explained = piece.lateness.find(({ check }) => ofCoat.some(({ fact }) => fact === check));
  return explained?.cause ?? null;
}
