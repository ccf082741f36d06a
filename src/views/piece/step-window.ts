import {
  countsFor,
  type Bench,
  type Piece,
  type PlannedStep,
  type Standing,
} from '../../tracker/bench/index.ts';
import type { PieceHours } from '../../tracker/estimate/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { closesAt, opensAt, stateAt, type Window } from '../../tracker/windows/index.ts';
import { whenInWords, windowWords } from '../format/index.ts';
import { labelLength } from '../parts/label-length.ts';
import { lastStrokeOf } from '../parts/last-stroke.ts';
import type { View } from '../screen.ts';
import { pieceWords } from './piece-words.ts';
import { isToDo } from './marked-step.ts';
import { plannedWait } from './planned-wait.ts';

/** A piece with all windows that its stamps have begun, and how it stands. */
export type OpenedPiece = {
  readonly bench: Bench;
  readonly piece: Piece;
  readonly windows: readonly Window[];
  readonly standing: Standing;
  readonly hours: PieceHours;
};

const isOver = ({ closedAt }: Window, now: Instant): boolean =>
  closedAt !== null && closedAt <= now;

/**
 * Of all windows that a step began, the one to tell: the one that the piece's row shows; one that still matters; else
 * the milestone for which a later step waited; else its own dwell.
 */
export function tellingWindow(
  { piece, windows, standing }: OpenedPiece,
  step: PlannedStep,
): Window | null {
  const own = windows.filter(({ subject }) => subject.stepId === step.id);
  const matters = [...(standing.window === null ? [] : [standing.window]), ...standing.windows];
  const live = matters.find(({ key }) => own.some((window) => window.key === key));
  if (live !== undefined) return live;
  const later = piece.steps.slice(piece.steps.indexOf(step) + 1).filter((each) => !each.skipped);
  for (const { needs } of later) {
    const needed = own.findLast(
      (window) =>
        window.rule.milestone !== undefined &&
        needs.includes(window.rule.milestone) &&
        !wasWettedAgain(window),
    );
    if (needed !== undefined) return needed;
  }
  return own.findLast(({ rule }) => rule.milestone === undefined) ?? null;
}

/** Washed before it was dry: that drying was never waited for, and whoever comes to sand waits for the wash. */
const wasWettedAgain = (window: Window): boolean =>
  window.rule.milestone === 'dry' &&
  window.foundReadyAt === null &&
  window.closedAt !== null &&
  window.closedAt < (opensAt(window) ?? Number.POSITIVE_INFINITY);

/** What stands in a step's window column: what its window showed, or shows, or when its own time comes. */
export function stepWindowWords(opened: OpenedPiece, step: PlannedStep, view: View): string {
  const { piece } = opened;
  if (step.skipped) return pieceWords(piece, step);
  const window = tellingWindow(opened, step);
  if (window !== null)
    return isOver(window, view.now) ? showed(opened, window) : runningWords(window, view);
  const words = pieceWords(piece, step);
  if (words !== '' || !isToDo(piece, step)) return words;
  const started = partsDone(piece, step);
  if (started !== '') return started;
  // What runs now is not what it will wait for while a coat is still to go on between.
  return plannedWait(piece, step) ?? openTimes(opened, step, view) ?? '';
}

/** `ready after 3 h 50`, `after 11 min: B on`: from the last stroke, a dwell from its beginning. */
function showed({ bench, piece }: OpenedPiece, window: Window): string {
  const { rule, begunAt, closedAt, foundReadyAt } = window;
  const from = rule.kind === 'chemical' ? begunAt : (lastStrokeOf(bench, piece, window) ?? begunAt);
  if (foundReadyAt !== null) return `ready after ${labelLength(foundReadyAt - from)}`;
  // The length first: "sand after 1 min" would tell what to do, of a step that is done.
  return closedAt === null
    ? ''
    : `after ${labelLength(Math.max(0, closedAt - from))}: ${rule.verb}`;
}

function runningWords(window: Window, { now, snapshot }: View): string {
  const { words, at } = windowWords(window, now, snapshot.shop);
  return at === null ? '' : `${words} ${whenInWords(at, now, snapshot.shop)}`.trim();
}

/** `case done, drawers done`, where some parts are further than others. */
const partsDone = (piece: Piece, step: PlannedStep): string =>
  piece.parts
    .filter(({ id }) =>
      piece.finishes.some((finish) => finish.step === step.id && countsFor(finish.part, id)),
    )
    .map(({ name }) => `${name} done`)
    .join(', ');

/** `15:10 to 23:00`: when the windows that a step waits for are open; null where none of them runs. */
function openTimes({ piece, windows }: OpenedPiece, step: PlannedStep, view: View): string | null {
  const { now, snapshot } = view;
  const awaited = windowsAwaited(piece, windows, step, now);
  if (awaited.length === 0) return null;
  const opening = Math.max(...awaited.map((window) => opensAt(window) ?? Number.POSITIVE_INFINITY));
  const closings = awaited.flatMap((window) => {
    const closing = closesAt(window, now);
    return closing === null ? [] : [closing.at];
  });
  const closing = closings.length === 0 ? null : Math.min(...closings);
  const late = awaited.find((window) => stateAt(window, now) === 'late');
  if (late !== undefined) return runningWords(late, view);
  const when = (at: Instant): string => whenInWords(at, now, snapshot.shop);
  if (!Number.isFinite(opening)) return '';
  if (closing !== null && closing <= opening) return `from ${when(opening)}, late`;
  if (opening <= now) return closing === null ? 'open' : `till ${when(closing)}`;
  return closing === null ? `from ${when(opening)}` : `${when(opening)} to ${when(closing)}`;
}

/** Windows still running, of steps before this one, for whose milestones it waits. */
export const windowsAwaited = (
  piece: Piece,
  windows: readonly Window[],
  step: PlannedStep,
  now: Instant,
): readonly Window[] => {
  const place = piece.steps.indexOf(step);
  return windows.filter(
    (window) =>
      window.rule.milestone !== undefined &&
      step.needs.includes(window.rule.milestone) &&
      !isOver(window, now) &&
      piece.steps.findIndex(({ id }) => id === window.subject.stepId) < place,
  );
};
