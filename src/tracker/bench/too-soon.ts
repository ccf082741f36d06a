import { minute, type Instant } from '../time/index.ts';
import { opensAt, stateAt } from '../windows/evaluate.ts';
import type { EdgeSense, Window } from '../windows/model.ts';
import type { Bench } from './bench.ts';
import type { Piece, PlannedStep } from './piece.ts';
import { windowsOf } from './piece-windows.ts';
import { countsFor, stampsOf } from './progress.ts';
import { waitsFor } from './waits-for.ts';

/**
 * How many minutes it still is, rounded up, till what a step waits for is open; 0 where nothing keeps it, it was begun
 * already, or nobody knows. What was found ready is open.
 */
export function minutesTooSoon(
  bench: Bench,
  { piece, part, step }: { piece: Piece; part: string | null; step: PlannedStep },
  now: Instant,
  sense: EdgeSense,
): number {
  if (step.needs.length === 0 || stampsOf(piece, step.id, part).length > 0) return 0;
  const waits = windowsOf(bench, piece, sense).flatMap((window) => {
    const { subject, begunAt } = window;
    const isOfPart = part === null || countsFor(subject.partId, part);
    if (!isOfPart || begunAt > now || !waitsFor(piece, step, window, part)) return [];
    const opens = opensYet(window, now);
    return opens === null ? [] : [opens - now];
  });
  return Math.ceil(Math.max(0, ...waits) / minute);
}

/** When a window that is shut opens; null where it isn't shut, or nobody knows. A finding doesn't lift a forbidden gap. */
function opensYet(window: Window, now: Instant): Instant | null {
  switch (stateAt(window, now)) {
    case 'before':
      return window.foundReadyAt === null ? opensAt(window) : null;
    case 'barred':
      return (
        window.stretches.find(({ meaning, begins }) => meaning === 'go' && begins > now)?.begins ??
        null
      );
    default:
      return null;
  }
}
