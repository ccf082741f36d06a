import { happeningsOfWindow, type Bench, type Piece } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { chooseStamp, type Window } from '../../tracker/windows/index.ts';

/** When the last stroke of what a window is about was put on; null where there is none to count from. */
export function lastStrokeOf(bench: Bench, piece: Piece, window: Window): Instant | null {
  const happenings = happeningsOfWindow(piece, bench.sessions, window);
  if (happenings === null) return null;
  const stroke = chooseStamp({ events: ['last-stroke'], which: 'last' }, happenings);
  return stroke.known ? stroke.at : null;
}
