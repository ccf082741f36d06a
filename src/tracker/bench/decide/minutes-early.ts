import { minute } from '../../time/index.ts';
import { opensAt, stretchAt } from '../../windows/evaluate.ts';
import type { Window } from '../../windows/model.ts';
import type { IntentContext } from '../intents.ts';
import type { Bench } from '../bench.ts';
import type { Stamp } from '../piece.ts';
import { windowsOf } from '../piece-windows.ts';
import { countsFor, stampsOf } from '../progress.ts';
import { waitsFor } from '../waits-for.ts';
import { isChosen } from '../window-closing.ts';
import { instantOf } from './context.ts';
import type { StepOnLane } from './step-on-lane.ts';

/**
 * How many minutes before its opening a stamp ends a window of its own step, or the stroke that begins a step one that
 * the step waits for, rounded up; 0 if none.
 */
export function minutesEarly(
  bench: Bench,
  { piece, part, step }: StepOnLane,
  { event, agent, pass }: Pick<Stamp, 'event' | 'agent' | 'pass'>,
  context: IntentContext,
): number {
  const at = instantOf(context);
  const begins =
    (event === 'first-stroke' || event === 'section-on') &&
    stampsOf(piece, step.id, part).length === 0;
  const endsOwn = ({ rule, subject }: Window): boolean =>
    subject.stepId === step.id &&
    (rule.closedBy.by === 'next pass'
      ? event === 'first-stroke' && pass === subject.pass + 1
      : rule.closedBy.by === 'stamp' && isChosen(rule.closedBy.stamp, event, agent));
  // In a gap in which nothing may go on, what comes of it says more.
  const isWaiting = (window: Window): boolean => stretchAt(window, at).meaning === 'wait';
  const ended = windowsOf(bench, piece, context.sense).filter(
    (window) =>
      (part === null || countsFor(window.subject.partId, part)) &&
      window.closedAt === null &&
      (endsOwn(window) || (begins && isWaiting(window) && waitsFor(piece, step, window, part))),
  );
  const waits = ended.map((window) => (opensAt(window) ?? at) - at);
  return Math.ceil(Math.max(0, ...waits) / minute);
}
