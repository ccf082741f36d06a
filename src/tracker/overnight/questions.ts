import { overnightQuestions, type OvernightQuestion } from '../bench/facts.ts';
import type { Bench } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { windowsOf } from '../bench/piece-windows.ts';
import { openPots } from '../bench/pot-window.ts';
import { standingsAt } from '../bench/standing.ts';
import type { Instant } from '../time/index.ts';
import type { Product } from '../trade/schedule.ts';
import { stateAt } from '../windows/evaluate.ts';
import type { EdgeSense, WindowKind } from '../windows/model.ts';

/** The questions of shutting up shop that apply tonight. Each is asked until it was answered with yes. */
export function questionsFor(
  bench: Bench,
  now: Instant,
  sense: EdgeSense,
): readonly OvernightQuestion[] {
  const applies: Readonly<Record<OvernightQuestion, () => boolean>> = {
    rags: () => ragsFrom(bench).length > 0,
    pots: () => hasMixedPot(bench, now, sense),
    gun: () => usedSince(bench, 'gun').some(usesGun),
    cans: () => usedSince(bench, 'cans').some(({ product }) => product !== undefined),
    heat: () => isDrying(bench, now, sense),
  };
  return overnightQuestions.filter((question) => applies[question]());
}

/**
 * Pieces on which something was used since rags were last dealt with whose rags, pads, steel wool and dust heat up by
 * themselves; also pieces that have left the bench since.
 */
export function ragsFrom(bench: Bench): readonly Piece[] {
  let pieces = knownRags.get(bench);
  if (pieces === undefined) {
    const used = usedSince(bench, 'rags').filter(
      ({ product }) => product?.selfHeatingRags === true,
    );
    pieces = [...new Set(used.map(({ piece }) => piece))];
    knownRags.set(bench, pieces);
  }
  return pieces;
}

/** The present doesn't change it, and the bench says it in every frame. */
const knownRags = new WeakMap<Bench, readonly Piece[]>();

/** When a question was last answered with yes, at closing or for itself, and that was not taken back. */
function lastYes(bench: Bench, question: OvernightQuestion): Instant {
  const yes = bench.trail.done
    .flatMap((group) => bench.groups.get(group) ?? [])
    .filter(
      (fact) =>
        (fact.kind === 'shop-shut' && fact.body.answers[question] === 'yes') ||
        (fact.kind === 'rags-dealt-with' && question === 'rags'),
    )
    .map(({ at }) => at);
  return Math.max(Number.NEGATIVE_INFINITY, ...yes);
}

type Use = {
  readonly piece: Piece;
  readonly step: PlannedStep;
  readonly product: Product | undefined;
};

/** Steps worked on, on any piece and also on one that has left the bench, since a question was last answered with yes. */
function usedSince(bench: Bench, question: OvernightQuestion): readonly Use[] {
  const since = lastYes(bench, question);
  return [...bench.pieces.values()].flatMap((piece) => {
    const worked = new Set(
      [...piece.stamps, ...piece.finishes].filter(({ at }) => at > since).map(({ step }) => step),
    );
    return piece.steps
      .filter(({ id }) => worked.has(id))
      .map((step) => ({ piece, step, product: productOf(piece, step) }));
  });
}

const productOf = (piece: Piece, { product }: PlannedStep): Product | undefined =>
  product === undefined ? undefined : piece.products[product];

/** A can that sprays by itself has no gun to be cleaned. */
const usesGun = ({ step, product }: Use): boolean =>
  step.stepClass === 'coat, sprayed' && !/aerosol/i.test(product?.productClass ?? '');

function hasMixedPot(bench: Bench, now: Instant, sense: EdgeSense): boolean {
  const since = lastYes(bench, 'pots');
  if (openPots(bench).some(({ mixedAt }) => mixedAt > since)) return true;
  return [...bench.pieces.values()]
    .flatMap((piece) => windowsOf(bench, piece, sense))
    .some(
      ({ rule, begunAt, closedAt }) =>
        rule.kind === 'pot' && begunAt > since && (closedAt === null || closedAt > now),
    );
}

const needWarmth: ReadonlySet<WindowKind> = new Set(['coat', 'cure', 'glue']);

const isDrying = (bench: Bench, now: Instant, sense: EdgeSense): boolean =>
  standingsAt(bench, now, sense).some(({ windows }) =>
    windows.some((window) => needWarmth.has(window.rule.kind) && stateAt(window, now) === 'before'),
  );
