import { chooseStamp } from '../windows/edges.ts';
import { opensAt, workOutWindow } from '../windows/evaluate.ts';
import { senseWithOwnTime } from '../windows/own-time.ts';
import type { EdgeSense, Window } from '../windows/model.ts';
import type { Instant } from '../time/index.ts';
import type { Bench, Session } from './bench.ts';
import type { Check, Piece } from './piece.ts';
import { happeningsOfWindow, windowsOf } from './piece-windows.ts';

/** From here on a "not yet" is no matter of patience any more (common practice, no source). */
const lateFrom = 3;

/** A "not yet" that came far too late, and how many times as long as expected it has been. */
export type LateCheck = { readonly check: Check; readonly window: Window; readonly times: number };

/** The last "not yet" of a piece, where it came far too late and nobody has said why. */
export function lateCheckOf(bench: Bench, piece: Piece, sense: EdgeSense): LateCheck | null {
  const check = lastNotYet(piece);
  if (check === null || piece.lateness.some((each) => each.check === check.fact)) return null;
  const window = windowsOf(bench, piece, sense).find(({ key }) => key === check.window);
  if (window === undefined) return null;
  const times = lateTimes(piece, bench.sessions, window, check.at, sense);
  return times === null ? null : { check, window, times };
}

/** The last check of a piece, if it found the surface not yet as it should be. */
export function lastNotYet({ checks }: Piece): Check | null {
  const last = checks.findLast(({ finding }) => finding !== 'trouble');
  return last?.finding === 'not yet' ? last : null;
}

/** How many times the expected wait has gone at an instant; null below three, or where nothing was expected. */
export function lateTimes(
  piece: Piece,
  sessions: readonly Session[],
  window: Window,
  at: Instant,
  sense: EdgeSense,
): number | null {
  const { rule, begunAt, own } = window;
  const happenings = happeningsOfWindow(piece, sessions, window);
  if (happenings === null) return null;
  // What earlier checks added was not expected.
  const untried = workOutWindow(
    window,
    { ...happenings, checks: [] },
    senseWithOwnTime(sense, rule, own),
  );
  const opening = untried === null ? null : opensAt(untried);
  const stroke = chooseStamp({ events: ['last-stroke'], which: 'last' }, happenings);
  const from = stroke.known ? stroke.at : begunAt;
  if (opening === null || opening <= from) return null;
  const times = (at - from) / (opening - from);
  return times >= lateFrom ? times : null;
}
