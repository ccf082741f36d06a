import { lanesOf, type Piece } from '../../tracker/bench/index.ts';
import { refused, type Step } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';
import type { BenchState } from './bench-state.ts';

/** Selects by number; the same digit again goes to the next part. */
export function selectNumber(state: BenchState, number: number, rows: BenchRows): Step<BenchState> {
  const chosen = rows.all.find(({ piece }) => piece?.number === number);
  if (chosen === undefined)
    return { state, message: refused(`Not selected: no piece has number ${number}.`) };
  if (chosen.key === rows.selected?.key && state.selected !== null) {
    return { state: { ...state, part: nextPart(chosen.piece, state.part) } };
  }
  return { state: { ...state, before: state.selected, selected: chosen.key, part: null } };
}

/** The part after the selected one, and the whole piece after the last; null where there are no parts. */
export const nextPart = (piece: Piece | null, part: string | null): string | null => {
  if (piece === null || piece.parts.length === 0) return null;
  const ids = [null, ...lanesOf(piece)];
  return ids[(ids.indexOf(part) + 1) % ids.length] ?? null;
};

/** Goes up or down by rows, from the last to the first. */
export function moveSelection(state: BenchState, rows: BenchRows, by: number): BenchState {
  const order = [...rows.rows, ...rows.hold, ...rows.curing];
  const at = order.findIndex(({ key }) => key === rows.selected?.key);
  const from = at < 0 && by < 0 ? 0 : at;
  const next = order[(from + by + order.length) % order.length];
  return next === undefined
    ? state
    : { ...state, before: state.selected, selected: next.key, part: null };
}
