import { inHand } from '../../tracker/bench/index.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Step, type View } from '../screen.ts';
import type { BenchState } from './bench-state.ts';
import { sendIntent } from './send-intent.ts';

/** Picks up again what was in hand before: the last session's piece that is not in hand now. */
export function backTo(state: BenchState, view: View, port: BenchPort): Step<BenchState> {
  const { bench } = view.snapshot;
  const held = new Set(
    inHand(bench).flatMap((session) => session.targets.map(({ piece }) => piece)),
  );
  const last = bench.sessions
    .filter((session) => session.end !== null && !session.dropped)
    .toSorted((a, b) => (b.end ?? 0) - (a.end ?? 0))
    .flatMap((session) => session.targets.slice(0, 1))
    .find(({ piece }) => !held.has(piece) && bench.pieces.get(piece)?.place === 'bench');
  if (last === undefined)
    return { state, message: refused('Not picked up: nothing was in hand before.') };
  const next: BenchState = { ...state, selected: last.piece, part: last.part };
  const targets = [{ piece: last.piece, part: last.part }];
  return sendIntent(next, { do: 'pick up', targets }, view, port);
}
