import { expect } from 'vitest';
import { lockOn, nextAct, questionOf, type PlannedStep } from '../../src/tracker/bench/index.ts';
import { minute, type Instant } from '../../src/tracker/time/index.ts';
import { opensAt, stateAt } from '../../src/tracker/windows/index.ts';
import { atTheLabel, monday, type Work } from './work.ts';

/** One press of the next-stamp key, and what it was on. */
export type Pressed = { readonly pressed: string; readonly step: string; readonly at: Instant };

/**
 * Works a piece through the whole schedule with Space, as a person would: waits for what the next step needs, then
 * presses; judges a trial once its time is over; answers what is asked; washes a pot out. A sectional step is worked in
 * two sections and finished outright.
 *
 * @param answers by the id of the step that asks; a question that is not in it is left open
 */
export function walk(work: Work, answers: Readonly<Record<string, string>>): readonly Pressed[] {
  const presses: Pressed[] = [];
  let now = monday + minute;
  let begun = '';
  for (let count = 0; count < 400; count += 1) {
    const next = nextAct(work.bench, work.piece, null, { now, sense: atTheLabel });
    if (next.act === 'nothing left') return presses;
    if (lockOn(work.piece, next.step) !== null) {
      now = judge(work, now);
      continue;
    }
    // What the step needs is asked once, before its first stroke: after that it starts milestones of its own.
    if (next.step.id !== begun) now = waited(work, next.step, now);
    begun = next.step.id;
    now += 2 * minute;
    const twoSectionsOff = next.act === 'stamp' && next.next.section === 3;
    const isDone = next.act === 'done' || twoSectionsOff;
    if (twoSectionsOff) work.done(now);
    else work.press(now);
    presses.push({
      pressed: isDone ? `done ${next.step.id}` : next.says,
      step: next.step.id,
      at: now,
    });
    if (isDone) finish(work, next.step, answers, now);
  }
  throw new Error('the schedule has no end');
}

/** Until everything that a step needs is open; each of its needs has just one window that runs. */
function waited(work: Work, step: PlannedStep, from: Instant): Instant {
  let now = from;
  for (const need of step.needs) {
    const windows = work
      .windows()
      .filter((window) => window.rule.milestone === need && window.closedAt === null);
    expect([step.id, need, windows.length]).toEqual([step.id, need, 1]);
    for (const window of windows) now = Math.max(now, opensAt(window) ?? now);
    for (const window of windows) expect(['open', 'closing']).toContain(stateAt(window, now));
  }
  return now;
}

function judge(work: Work, from: Instant): Instant {
  const window = work.window('trial');
  const now = Math.max(from, opensAt(window) ?? from);
  work.check('ready', window.key, now);
  return now;
}

function finish(
  work: Work,
  step: PlannedStep,
  answers: Readonly<Record<string, string>>,
  now: Instant,
): void {
  const pots = work
    .windows()
    .filter(({ rule, closedAt }) => rule.kind === 'pot' && closedAt === null);
  if (pots.length > 0) work.stamp('washed-out', now);
  const asks = questionOf(work.piece, step.id);
  const answer = asks === null ? undefined : answers[asks.id];
  if (asks !== null && answer !== undefined)
    work.act({ do: 'answer', piece: work.piece.id, step: asks.id, answer }, now);
}
