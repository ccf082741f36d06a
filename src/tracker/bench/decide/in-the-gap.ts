import { stretchAt } from '../../windows/evaluate.ts';
import type { Window } from '../../windows/model.ts';
import type { IntentContext } from '../intents.ts';
import type { Bench } from '../bench.ts';
import type { Stamp } from '../piece.ts';
import { windowsOf } from '../piece-windows.ts';
import { countsFor, stampsOf } from '../progress.ts';
import { instantOf } from './context.ts';
import type { StepOnLane } from './step-on-lane.ts';

/** What comes of a stroke that goes on in the gap in which nothing may; null where it goes into none. */
export function gapTrouble(
  bench: Bench,
  { piece, part, step }: StepOnLane,
  stamps: readonly Pick<Stamp, 'event' | 'pass'>[],
  context: IntentContext,
): string | null {
  const stroke = stamps.find(({ event }) => event === 'first-stroke' || event === 'section-on');
  if (stroke === undefined) return null;
  const at = instantOf(context);
  const isFirst = stampsOf(piece, step.id, part).length === 0;
  const goesOver = ({ rule, subject }: Window): boolean =>
    subject.stepId === step.id
      ? rule.closedBy.by === 'next pass' && stroke.pass === subject.pass + 1
      : isFirst && rule.milestone !== undefined && step.needs.includes(rule.milestone);
  const barred = windowsOf(bench, piece, context.sense)
    .filter(({ subject }) => part === null || countsFor(subject.partId, part))
    .filter(({ closedAt, begunAt }) => closedAt === null && begunAt <= at)
    .filter(goesOver)
    .map((window) => stretchAt(window, at))
    .find(({ meaning }) => meaning === 'keep off');
  if (barred === undefined) return null;
  return `Keep off: ${barred.says ?? 'nothing goes on it now'}`;
}
