import { explainEdge, type EdgeReason } from '../windows/explain-edge.ts';
import type { EdgeSense, TimedStretch, Window } from '../windows/model.ts';
import { senseWithOwnTime } from '../windows/own-time.ts';
import type { Bench } from './bench.ts';
import { happeningsOfWindow } from './piece-windows.ts';

/** Why a stretch of a window begins when it does; null for the first one, and for an odd timer's. */
export function explainStretch(
  bench: Bench,
  window: Window,
  stretch: TimedStretch,
  sense: EdgeSense,
): EdgeReason | null {
  const piece = bench.pieces.get(window.subject.pieceId);
  if (piece === undefined || stretch.from === undefined) return null;
  const happenings = happeningsOfWindow(piece, bench.sessions, window);
  if (happenings === null) return null;
  return explainEdge(stretch.from, happenings, senseWithOwnTime(sense, window.rule, window.own));
}
