import { minute } from '../../time/index.ts';
import { opensAt } from '../../windows/evaluate.ts';
import type { IntentContext } from '../intents.ts';
import type { Bench } from '../bench.ts';
import type { Stamp } from '../piece.ts';
import { windowsOf } from '../piece-windows.ts';
import { countsFor } from '../progress.ts';
import { isChosen } from '../window-closing.ts';
import { instantOf } from './context.ts';
import type { StepOnLane } from './step-on-lane.ts';

/** How many minutes before its opening a stamp ends a window of its own step, rounded up; 0 if none. */
export function minutesEarly(
  bench: Bench,
  { piece, part, step }: StepOnLane,
  { event, agent, pass }: Pick<Stamp, 'event' | 'agent' | 'pass'>,
  context: IntentContext,
): number {
  const at = instantOf(context);
  const ended = windowsOf(bench, piece, context.sense).filter(
    ({ rule, subject, closedAt }) =>
      subject.stepId === step.id &&
      (part === null || countsFor(subject.partId, part)) &&
      closedAt === null &&
      (rule.closedBy.by === 'next pass'
        ? event === 'first-stroke' && pass === subject.pass + 1
        : rule.closedBy.by === 'stamp' && isChosen(rule.closedBy.stamp, event, agent)),
  );
  const waits = ended.map((window) => (opensAt(window) ?? at) - at);
  return Math.ceil(Math.max(0, ...waits) / minute);
}
