import { trialWindow } from '../trade/schedule.ts';
import type { Check, Piece, PlannedStep } from './piece.ts';
import { originalOf } from './left-out.ts';
import { isDone } from './progress.ts';

/** Why a step waits: the trial that counts for it, and what that showed last. */
export type Lock = { readonly trial: PlannedStep; readonly shown: Check | null };

/**
 * What keeps a step from being begun: its trial (a test patch, a sample board) was not found ready yet. Null where it
 * has none, where somebody goes on without it, or where the step is under way: what runs is never stopped by this.
 */
export function lockOn(piece: Piece, step: PlannedStep): Lock | null {
  const id = originalOf(step);
  const trials = piece.steps.filter(
    ({ trialFor, leftOut }) => leftOut !== true && trialFor?.includes(id) === true,
  );
  const last = trials.at(-1);
  if (last === undefined || piece.waivers.some((waiver) => waiver.step === id)) return null;
  if (piece.stamps.some((stamp) => stamp.step === step.id) || isDone(piece, step.id, null))
    return null;
  const shown = piece.checks.findLast((check) =>
    trials.some((trial) => check.step === trial.id && isJudged(check)),
  );
  if (shown?.finding === 'ready') return null;
  const toDo = trials.find((trial) => !trial.skipped && !isDone(piece, trial.id, null));
  return {
    trial: toDo ?? trials.find(({ id: each }) => each === shown?.step) ?? last,
    shown: shown ?? null,
  };
}

const isJudged = ({ window, step }: Check): boolean => window.includes(`/${step}/${trialWindow}/`);

/** Which trial it is, and how far: `sample board, not made yet`. */
export function lockWords(piece: Piece, { trial, shown }: Lock): string {
  return `${trial.name}, ${howFar(piece, trial, shown)}`;
}

function howFar(piece: Piece, trial: PlannedStep, shown: Check | null): string {
  if (!isDone(piece, trial.id, null)) return trial.skipped ? 'skipped' : 'not made yet';
  switch (shown?.finding) {
    case undefined:
      return 'not looked at yet';
    case 'trouble':
      return `showed ${shown?.shown ?? 'trouble'}`;
    case 'not yet':
    case 'ready':
      return 'not found ready yet';
  }
}
