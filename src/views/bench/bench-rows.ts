import { standingsAt, type Standing } from '../../tracker/bench/index.ts';
import type { View } from '../screen.ts';
import type { BenchState } from './bench-state.ts';

/** The bench in its order: rows to draw, and what goes to the foot line. */
export type BenchRows = {
  readonly all: readonly Standing[];
  readonly rows: readonly Standing[];
  readonly hold: readonly Standing[];
  readonly curing: readonly Standing[];
  readonly selected: Standing | null;
};

export function benchRows(state: Pick<BenchState, 'selected'>, view: View): BenchRows {
  const all = standingsAt(view.snapshot.bench, view.now, view.snapshot.sense);
  return {
    all,
    rows: all.filter(({ rank }) => rank !== 'hold' && rank !== 'curing'),
    hold: all.filter(({ rank }) => rank === 'hold'),
    curing: all.filter(({ rank }) => rank === 'curing'),
    // What was selected may be gone. Then nothing is: a key must not act on a piece that nobody chose.
    selected:
      all.find((standing) => state.selected === null || standing.key === state.selected) ?? null,
  };
}

/** Whether the bench is shown large, for somebody across the shop. */
export function isFar(state: BenchState, view: View): boolean {
  const minutes = view.snapshot.settings.farView;
  return minutes > 0 && state.list === 'closed' && view.now - state.touchedAt >= minutes * 60_000;
}
