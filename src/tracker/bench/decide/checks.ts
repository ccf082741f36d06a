import { stretchAt } from '../../windows/evaluate.ts';
import type { Window } from '../../windows/model.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { lateTimes } from '../late-check.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { NewBenchFact } from '../facts.ts';
import type { Bench } from '../bench.ts';
import type { Piece } from '../piece.ts';
import { checkSays } from '../check-says.ts';
import { countsFor, isDone } from '../progress.ts';
import { standingOf } from '../standing.ts';
import { called, calledPart, factAt, instantOf, isOutcome, onBench } from './context.ts';
import { wrongNewStep } from './new-step.ts';

/** Windows that trying the surface tells something about. */
export const canBeTried = (window: Window): boolean => window.rule.notYetAdds !== undefined;

/** r, n, t: what trying the surface showed. It is about the window that the row shows, or the first that can be tried. */
export function check(
  bench: Bench,
  intent: Extract<Intent, { do: 'check' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not noted', intent.part);
  if (isOutcome(piece)) return piece;
  const standing = standingOf(bench, piece, instantOf(context), context.sense);
  const tried = standing.windows.filter(
    (window) =>
      canBeTried(window) && (intent.part === null || countsFor(window.subject.partId, intent.part)),
  );
  const shown = standing.window;
  const window =
    intent.window === undefined
      ? (tried.find((each) => each.key === shown?.key) ?? tried[0])
      : tried.find((each) => each.key === intent.window);
  if (window === undefined) {
    return refuse(
      `Not noted: nothing on ${called(piece)} is drying or setting, so there is nothing to try.`,
    );
  }
  if (context.at !== undefined && window.begunAt > context.at) {
    return refuse(`Not noted: ${called(piece)} had nothing on it then. Give a later time.`);
  }
  const { stepId, partId } = window.subject;
  const meaning = stretchAt(window, instantOf(context)).meaning;
  if (intent.finding === 'ready' && meaning === 'keep off') {
    return refuse(
      `Not noted: ${called(piece)} is to be kept off now; the surface can't show what the coat beneath does.`,
    );
  }
  const times =
    intent.finding === 'not yet'
      ? lateTimes(piece, bench.sessions, window, instantOf(context), context.sense)
      : null;
  const late = times === null ? '' : `; ${times.toFixed(1)} times as long as expected`;
  const putIn = remedyFacts(piece, stepId, intent, context);
  if (isOutcome(putIn)) return putIn;
  return accept(
    [
      factAt(context, {
        kind: 'checked',
        body: {
          piece: piece.id,
          part: partId,
          step: stepId,
          window: window.key,
          finding: intent.finding,
          ...(intent.shown === undefined ? {} : { shown: intent.shown }),
          air: context.air,
        },
      }),
      ...putIn,
    ],
    `${checkSays(piece, { finding: intent.finding, step: stepId, window: window.key })} on ${calledPart(piece, partId)}${counted(putIn.length)}${late}`,
    piece.id,
  );
}

const counted = (steps: number): string =>
  steps === 0 ? '' : `; ${steps} step${steps === 1 ? '' : 's'} put in`;

/** Puts remedies right after the step that had the trouble, before the first one after it that is still to do. */
function remedyFacts(
  piece: Piece,
  troubled: string,
  { finding, remedies = [] }: Extract<Intent, { do: 'check' }>,
  context: IntentContext,
): readonly NewBenchFact[] | Outcome {
  if (remedies.length === 0) return [];
  if (finding !== 'trouble') return refuse('Not noted: only trouble has remedies.');
  const later = piece.steps.slice(piece.steps.findIndex(({ id }) => id === troubled) + 1);
  const before = later.find(({ id }) => !isDone(piece, id, null))?.id ?? null;
  const facts: NewBenchFact[] = [];
  for (const [index, remedy] of remedies.entries()) {
    const wrong = wrongNewStep(piece, remedy, 'Not noted');
    if (wrong !== null) return wrong;
    const step = { ...remedy, name: remedy.name.trim(), id: `${context.group}-${index + 1}` };
    facts.push(factAt(context, { kind: 'step-inserted', body: { piece: piece.id, step, before } }));
  }
  return facts;
}
