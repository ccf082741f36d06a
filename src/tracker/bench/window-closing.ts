import type { Instant } from '../time/index.ts';
import { chooseStamp, type Happenings } from '../windows/edges.ts';
import { trialWindow } from '../trade/schedule.ts';
import type { StampChoice, Stretch, Window, WindowRule } from '../windows/model.ts';
import { originalOf } from './left-out.ts';
import type { PlannedStep, Stamp } from './piece.ts';
import {
  endsMilestone,
  finishOf,
  firstTouch,
  laterSteps,
  type SortedPiece,
} from './sorted-piece.ts';

/** When a window was ended, by its rule or because a later step has taken its place; null while nothing ended it. */
export function endOf(
  sorted: SortedPiece,
  step: PlannedStep,
  window: Window,
  on: { readonly stamps: readonly Stamp[]; readonly happenings: Happenings },
): Instant | null {
  const { rule, subject } = window;
  const finish = finishOf(sorted, step.id, subject.partId);
  const ends: Instant[] = [];
  if (rule.closedBy.by === 'stamp') {
    const { stamp } = rule.closedBy;
    ends.push(...stampsThatEnd(window, stamp, on.happenings));
    // A finished step leaves no stamp of its own to wait for, but a pot has still to be washed out.
    if (finish !== undefined && isPlanned(step, stamp) && rule.kind !== 'pot') ends.push(finish.at);
  }
  if (rule.closedBy.by === 'next pass' && finish !== undefined) ends.push(finish.at);
  if (rule.scope === 'pass') {
    const next = on.stamps.find((stamp) => stamp.pass === subject.pass + 1);
    if (next) ends.push(next.at);
  }
  ends.push(...laterStepsThatEnd(sorted, step, window));
  return ends.length === 0 ? null : Math.min(...ends);
}

function stampsThatEnd(
  { rule, begunAt }: Window,
  wanted: StampChoice,
  happenings: Happenings,
): readonly Instant[] {
  const { stamps } = happenings;
  const beginning = chooseStamp(rule.begins, happenings);
  const begun = stamps.findIndex((stamp) => beginning.known && stamp.fact === beginning.fact);
  return stamps
    .filter(({ event, agent, at }, index) => {
      // Told later is later too: a clock that was set back must not keep a window from closing.
      const isLater = at >= begunAt || (begun >= 0 && index > begun);
      return isLater && isChosen(wanted, event, agent);
    })
    .map(({ at }) => at);
}

const isPlanned = ({ stamps }: PlannedStep, wanted: StampChoice): boolean =>
  stamps.some(({ event, agent }) => isChosen(wanted, event, agent ?? null));

/** When later steps were begun that take the place of a milestone, or go on without judging a trial. */
function laterStepsThatEnd(
  sorted: SortedPiece,
  step: PlannedStep,
  { rule, subject, begunAt }: Window,
): readonly Instant[] {
  const { milestone } = rule;
  return laterSteps(sorted, step.id)
    .filter(
      (later) =>
        (milestone !== undefined && endsMilestone(sorted, later, milestone)) ||
        // Whoever went on without judging the trial has nothing more to judge.
        (rule.id === trialWindow && step.trialFor?.includes(originalOf(later)) === true),
    )
    .map((later) => firstTouch(sorted, later.id, subject.partId))
    .filter((begun): begun is Instant => begun !== null && begun >= begunAt);
}

/** Whether a stamp is one of those chosen. */
export const isChosen = (choice: StampChoice, event: string, agent: string | null): boolean =>
  choice.events.some((each) => each === event) &&
  (choice.agent === undefined || choice.agent === agent);

/** Once a later scuff is done, what was to be scuffed first is open again and loses nothing. */
export function withWorkDone(
  sorted: SortedPiece,
  step: PlannedStep,
  window: Window,
): Window['stretches'] {
  if (!window.stretches.some((stretch) => stretch.meaning === 'go after work'))
    return window.stretches;
  const isScuffed = laterSteps(sorted, step.id).some(
    (later) =>
      later.stepClass === 'scuff' &&
      finishOf(sorted, later.id, window.subject.partId) !== undefined,
  );
  if (!isScuffed) return window.stretches;
  const kept = window.stretches.findIndex((stretch) => stretch.meaning === 'go after work');
  const before = window.stretches.slice(0, kept);
  const last = before.at(-1);
  if (last?.meaning === 'go') return [...before.slice(0, -1), { ...last, ends: null }];
  const opened = window.stretches[kept];
  return opened === undefined ? before : [...before, { ...asGo(opened), ends: null }];
}

const asGo = <Timed extends Stretch>({
  says: _,
  ...stretch
}: Timed): Omit<Timed, 'says'> & { meaning: 'go' } => ({
  ...stretch,
  meaning: 'go',
  loss: 'costs nothing',
});

/**
 * Whether every window of a rule is over by what was recorded, without working it out: a milestone that a later step has
 * ended, or a window of the step's own that its finish ended.
 */
function isSurelyOver(sorted: SortedPiece, step: PlannedStep, rule: WindowRule): boolean {
  const finish = finishOf(sorted, step.id, null);
  if (rule.milestone === undefined) {
    if (finish === undefined || rule.kind === 'pot') return false;
    if (rule.closedBy.by === 'next pass') return true;
    const wanted = rule.closedBy.by === 'stamp' ? rule.closedBy.stamp : null;
    return wanted !== null && isPlanned(step, wanted);
  }
  const { milestone } = rule;
  const lastRecord = sorted.touches.get(step.id)?.last ?? 0;
  return laterSteps(sorted, step.id).some((later) => {
    const touched = firstTouch(sorted, later.id, null);
    return touched !== null && touched >= lastRecord && endsMilestone(sorted, later, milestone);
  });
}

/**
 * Whether a bench can have any use for the windows of a rule: they may not be over, and somebody waits for their
 * milestone, or it is a cure and nothing else is left to do. Of a piece in parts every rule counts.
 */
export function canMatter(sorted: SortedPiece, step: PlannedStep, rule: WindowRule): boolean {
  if (sorted.piece.parts.length > 0) return true;
  return isAwaited(sorted, rule) && !isSurelyOver(sorted, step, rule);
}

function isAwaited({ awaited }: SortedPiece, { milestone, kind }: WindowRule): boolean {
  if (milestone === undefined) return true;
  return awaited === null ? kind === 'cure' : awaited.has(milestone);
}
