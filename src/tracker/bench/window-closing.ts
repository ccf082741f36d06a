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
  type WorkedPiece,
} from './worked-piece.ts';

/** What ended a window, by its rule or because a later step has taken its place. */
export function closing(
  worked: WorkedPiece,
  step: PlannedStep,
  window: Window,
  stepStamps: readonly Stamp[],
  happenings: Happenings,
): Instant | null {
  const { rule, subject } = window;
  const ends: Instant[] = [];
  const finish = finishOf(worked, step.id, subject.partId);
  if (rule.closedBy.by === 'stamp') {
    const { stamp: wanted } = rule.closedBy;
    const beginning = chooseStamp(rule.begins, happenings);
    const begun = happenings.stamps.findIndex(
      (stamp) => beginning.known && stamp.fact === beginning.fact,
    );
    for (const [index, stamp] of happenings.stamps.entries()) {
      // Told later is later too: a clock that was set back must not keep a window from closing.
      const isLater = stamp.at >= window.begunAt || (begun >= 0 && index > begun);
      if (isChosen(wanted, stamp.event, stamp.agent) && isLater) ends.push(stamp.at);
    }
    const isPlanned = step.stamps.some((planned) =>
      isChosen(wanted, planned.event, planned.agent ?? null),
    );
    // A finished step leaves no stamp of its own to wait for, but a pot has still to be washed out.
    if (finish !== undefined && isPlanned && rule.kind !== 'pot') ends.push(finish.at);
  }
  if (rule.closedBy.by === 'next pass' && finish !== undefined) ends.push(finish.at);
  if (rule.scope === 'pass') {
    const next = stepStamps.find((stamp) => stamp.pass === subject.pass + 1);
    if (next) ends.push(next.at);
  }
  const reach = rule.milestone;
  if (reach !== undefined) {
    for (const later of laterSteps(worked, step.id)) {
      if (!endsMilestone(worked, later, reach)) continue;
      const started = firstTouch(worked, later.id, subject.partId);
      if (started !== null && started >= window.begunAt) ends.push(started);
    }
  }
  // Whoever went on without judging the trial has nothing more to judge.
  if (rule.id === trialWindow) {
    for (const later of laterSteps(worked, step.id)) {
      if (step.trialFor?.includes(originalOf(later)) !== true) continue;
      const started = firstTouch(worked, later.id, subject.partId);
      if (started !== null && started >= window.begunAt) ends.push(started);
    }
  }
  return ends.length === 0 ? null : Math.min(...ends);
}

/** Whether a stamp is one of those chosen. */
export const isChosen = (choice: StampChoice, event: string, agent: string | null): boolean =>
  choice.events.some((each) => each === event) &&
  (choice.agent === undefined || choice.agent === agent);

/** Once a later scuff is done, what was to be scuffed first is open again and loses nothing. */
export function withWorkDone(
  worked: WorkedPiece,
  step: PlannedStep,
  window: Window,
): Window['stretches'] {
  if (!window.stretches.some((stretch) => stretch.meaning === 'go after work'))
    return window.stretches;
  const scuffed = laterSteps(worked, step.id).some(
    (later) =>
      later.stepClass === 'scuff' &&
      finishOf(worked, later.id, window.subject.partId) !== undefined,
  );
  if (!scuffed) return window.stretches;
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
function isSurelyOver(worked: WorkedPiece, step: PlannedStep, rule: WindowRule): boolean {
  const finish = finishOf(worked, step.id, null);
  if (rule.milestone === undefined) {
    if (finish === undefined || rule.kind === 'pot') return false;
    if (rule.closedBy.by === 'next pass') return true;
    const wanted = rule.closedBy.by === 'stamp' ? rule.closedBy.stamp : null;
    return (
      wanted !== null &&
      step.stamps.some(({ event, agent }) => isChosen(wanted, event, agent ?? null))
    );
  }
  const { milestone } = rule;
  const lastRecord = worked.touches.get(step.id)?.last ?? 0;
  return laterSteps(worked, step.id).some((later) => {
    const touched = firstTouch(worked, later.id, null);
    return touched !== null && touched >= lastRecord && endsMilestone(worked, later, milestone);
  });
}

/**
 * Whether a bench can have any use for the windows of a rule: they may not be over, and somebody waits for their
 * milestone, or it is a cure and nothing else is left to do. Of a piece in parts every rule counts.
 */
export function canMatter(worked: WorkedPiece, step: PlannedStep, rule: WindowRule): boolean {
  if (worked.piece.parts.length > 0) return true;
  return isAwaited(worked, rule) && !isSurelyOver(worked, step, rule);
}

function isAwaited({ awaited }: WorkedPiece, { milestone, kind }: WindowRule): boolean {
  if (milestone === undefined) return true;
  return awaited === null ? kind === 'cure' : awaited.has(milestone);
}
