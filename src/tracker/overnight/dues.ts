import { standingsAt } from '../bench/standing.ts';
import type { Bench, OddTimer, Pot } from '../bench/bench.ts';
import type { Piece } from '../bench/piece.ts';
import type { Instant } from '../time/index.ts';
import type { EdgeSense, Loss, TimedStretch, Window } from '../windows/model.ts';

/** One edge of a window that falls while nobody is there. */
export type Due = {
  readonly piece: Piece | null;
  readonly timer: OddTimer | null;
  readonly pot: Pot | null;
  readonly window: Window;
  readonly at: Instant;
  /** The stretch that ends then, and the one that begins. */
  readonly ends: TimedStretch;
  readonly begins: TimedStretch;
  /** What it costs that nobody is there. */
  readonly loss: Loss;
};

const losses: readonly Loss[] = ['spoils', 'costs work', 'costs nothing'];

/**
 * Every edge that falls after now and up to `till` (null: ever), worst first, then by time. Coming from what costs
 * nothing into what costs nothing is no edge.
 */
export function duesTill(
  bench: Bench,
  now: Instant,
  till: Instant | null,
  sense: EdgeSense,
): readonly Due[] {
  const dues = standingsAt(bench, now, sense).flatMap(({ piece, timer, pot, windows }) =>
    windows.flatMap((window) =>
      edgesOf(window)
        .filter(({ at }) => at > now && (till === null || at <= till))
        .map((edge): Due => ({ ...edge, piece, timer, pot, window, loss: lossOf(edge.begins) })),
    ),
  );
  return withoutDoubles(dues).sort(
    (a, b) => losses.indexOf(a.loss) - losses.indexOf(b.loss) || a.at - b.at,
  );
}

/** Several milestones of one coat often open at once: where that costs nothing, one of them is enough. */
const withoutDoubles = (dues: readonly Due[]): Due[] =>
  dues.filter(
    (due, index) =>
      due.loss !== 'costs nothing' ||
      due.piece === null ||
      !dues
        .slice(0, index)
        .some(({ piece, at, loss }) => piece === due.piece && at === due.at && loss === due.loss),
  );

type WindowEdge = Pick<Due, 'at' | 'ends' | 'begins'>;

const edgesOf = ({ stretches }: Window): readonly WindowEdge[] =>
  stretches.flatMap((begins, index) => {
    const ends = stretches[index - 1];
    if (ends === undefined || (isHarmless(ends) && isHarmless(begins))) return [];
    return [{ at: begins.begins, ends, begins }];
  });

const isHarmless = ({ meaning, loss }: TimedStretch): boolean =>
  meaning === 'go' || (meaning === 'late' && loss === 'costs nothing');

/** A forbidden gap costs the wait, even where the label puts no work on it. */
const lossOf = ({ meaning, loss }: TimedStretch): Loss =>
  meaning === 'keep off' && loss === 'costs nothing' ? 'costs work' : loss;
