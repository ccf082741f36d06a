import { currentStep } from '../bench/progress.ts';
import type { Bench } from '../bench/bench.ts';
import type { Note, Piece } from '../bench/piece.ts';
import type { Instant } from '../time/index.ts';
import { stepClasses, type StepClass } from '../trade/schedule.ts';
import { hoursWith, isCompared, type PieceHours, type StepHours } from './hours.ts';
import { importedPieces } from './imported-hours.ts';
import { sampleQuantile } from './sample-quantile.ts';
import { sessionsByPiece } from './worked-time.ts';

/** A step that was done and timed, on a finished piece. Minutes are hands-on. */
export type ComparedStep = StepHours & {
  readonly minutes: number;
  readonly piece: Piece;
  /** Minutes by estimate: 2 is twice as long. */
  readonly ratio: number;
  readonly note: Note | null;
};

/** How a kind of work went, over finished pieces. */
export type Lean = {
  /** How many pieces tell of it. */
  readonly pieces: number;
  /**
   * Minutes by estimate, of each piece: the middle one, and the range that four in five of these pieces fall into.
   * It tells of the pieces so far, not of the next one. Null with no piece; the range also below three.
   */
  readonly ratio: number | null;
  readonly range: { readonly low: number; readonly high: number } | null;
  /** Single steps, the furthest off first, in either direction. */
  readonly steps: readonly ComparedStep[];
};

export type ClassLean = Lean & { readonly stepClass: StepClass };

/** How often the stored range held what it came to. `claimed` is the chance that the ranges claimed, 0..1. */
export type Held = { readonly held: number; readonly of: number; readonly claimed: number | null };

export type FinishedHours = {
  readonly pieces: readonly PieceHours[];
  readonly whole: Lean;
  /** In the order of the trade; also classes that only pieces in work have: nothing from these hands yet. */
  readonly classes: readonly ClassLean[];
  readonly held: Held;
  /** When the first and the last of the pieces left the bench or were finished. */
  readonly since: Instant | null;
  readonly until: Instant | null;
};

const fewestForRange = 3;

/** One bench's part in it: its finished pieces, and the classes of work that its pieces have planned. */
export type FinishedShare = {
  readonly pieces: readonly PieceHours[];
  readonly planned: ReadonlySet<StepClass>;
  /** Every piece that this bench knows, finished or not. */
  readonly ids: ReadonlySet<string>;
};

/**
 * Finished is what has left the bench or has every step done; what was removed is left out. Costly for ten years of
 * pieces, and the same as long as the bench is the same and nothing on it is in hand.
 */
export function finishedShare(bench: Bench, now: Instant): FinishedShare {
  const sessions = sessionsByPiece(bench);
  const kept = [...bench.pieces.values()].filter(({ place }) => place !== 'removed');
  return {
    pieces: [
      ...kept.filter(isFinished).map((piece) => hoursWith(bench, piece, sessions, now)),
      ...importedPieces(bench),
    ],
    planned: new Set([
      ...(bench.imports ?? []).flatMap(({ rows }) => rows.map(({ stepClass }) => stepClass)),
      ...kept.flatMap(({ steps }) =>
        steps.filter(({ skipped }) => !skipped).map(({ stepClass }) => stepClass),
      ),
    ]),
    ids: new Set(bench.pieces.keys()),
  };
}

/**
 * What finished pieces took, against what was estimated. `benches` are folds of different files; a piece that stands in
 * several counts once, as the first of them has it.
 */
export const hoursOfFinished = (benches: readonly Bench[], now: Instant): FinishedHours =>
  finishedTogether(benches.map((bench) => finishedShare(bench, now)));

/** The same from shares that were worked out before. */
export function finishedTogether(shares: readonly FinishedShare[]): FinishedHours {
  const pieces = shares.flatMap((share, index) =>
    share.pieces.filter(
      ({ piece }) => !shares.slice(0, index).some(({ ids }) => ids.has(piece.id)),
    ),
  );
  const compared = pieces.flatMap(comparedSteps);
  const byClass = Map.groupBy(compared, ({ step }) => step.stepClass);
  const ends = pieces.map(({ piece }) => finishedAt(piece));
  return {
    pieces,
    whole: leanOf(compared),
    classes: stepClasses
      .filter((stepClass) => shares.some(({ planned }) => planned.has(stepClass)))
      .map((stepClass) => ({ stepClass, ...leanOf(byClass.get(stepClass) ?? []) })),
    held: heldBy(compared),
    since: ends.length === 0 ? null : Math.min(...ends),
    until: ends.length === 0 ? null : Math.max(...ends),
  };
}

const isFinished = (piece: Piece): boolean =>
  piece.place === 'past' || (currentStep(piece, null) === null && piece.finishes.length > 0);

/** When a finished piece left the bench, else when its last step was done. */
export const finishedAt = ({ leftAt, finishes, addedAt }: Piece): Instant =>
  leftAt ?? Math.max(addedAt, ...finishes.map(({ at }) => at));

function comparedSteps({ piece, steps }: PieceHours): readonly ComparedStep[] {
  return steps.filter(isCompared).flatMap((hours) => {
    const ratio = hours.minutes / hours.expected.minutes;
    const note = piece.notes.findLast(({ step }) => step === hours.step.id) ?? null;
    return ratio > 0 && Number.isFinite(ratio) ? [{ ...hours, piece, ratio, note }] : [];
  });
}

/** How steps went together, piece by piece. */
export function leanOf(compared: readonly ComparedStep[]): Lean {
  const ratios = [...Map.groupBy(compared, ({ piece }) => piece.id).values()].map((own) => {
    const took = own.reduce((sum, { minutes }) => sum + minutes, 0);
    return took / own.reduce((sum, { expected }) => sum + expected.minutes, 0);
  });
  const low = sampleQuantile(ratios, 0.1);
  const high = sampleQuantile(ratios, 0.9);
  return {
    pieces: ratios.length,
    ratio: sampleQuantile(ratios, 0.5),
    range: low === null || high === null || ratios.length < fewestForRange ? null : { low, high },
    steps: compared.toSorted((a, b) => Math.abs(Math.log(b.ratio)) - Math.abs(Math.log(a.ratio))),
  };
}

/** Hours from elsewhere claimed no range, so that none of theirs could hold. */
function heldBy(all: readonly ComparedStep[]): Held {
  const compared = all.filter(({ verdict }) => verdict !== null);
  const claims = compared.map(({ expected }) => expected.chance);
  return {
    held: compared.filter(({ verdict }) => verdict === 'inside').length,
    of: compared.length,
    claimed: meanChance(claims),
  };
}

/** The chance that ranges claimed on the whole; null of none. Adding up leaves no trace in it: 0.8, not 0.8000000000000002. */
export function meanChance(chances: readonly number[]): number | null {
  if (chances.length === 0) return null;
  const mean = chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
  return Math.round(mean * 1e6) / 1e6;
}
