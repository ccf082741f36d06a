import { nearest } from '../../trade/nearest.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece } from '../piece.ts';
import { askingSteps, questionOpen, type AskingStep } from '../questions.ts';
import { called, factAt, isOutcome, onBench, stepOf } from './context.ts';

/** What a step with a question showed. It may be answered again, and for as long as the piece is on the bench. */
export function answerQuestion(
  bench: Bench,
  intent: Extract<Intent, { do: 'answer' }>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not answered');
  if (isOutcome(piece)) return piece;
  const step = stepAsked(piece, intent.step);
  if (isOutcome(step)) return step;
  const { asks } = step;
  const answer = asks.answers.find(({ id }) => id === intent.answer);
  if (intent.answer !== null && answer === undefined) {
    const ids = asks.answers.map(({ id }) => id);
    const near = nearest(intent.answer, ids);
    return refuse(
      `Not answered: "${intent.answer}" is no answer to "${asks.question}" on ${called(piece)}.`,
      near.length > 0 ? near : ids,
    );
  }
  return accept(
    [
      factAt(context, {
        kind: 'question-answered',
        body: { piece: piece.id, step: step.id, answer: intent.answer },
      }),
    ],
    `${step.name}: ${answer?.says ?? 'no answer'}, on ${called(piece)}`,
    piece.id,
  );
}

function stepAsked(piece: Piece, id: string | undefined): AskingStep | Outcome {
  const nothing = `Not answered: no step of ${called(piece)} asks anything.`;
  if (id === undefined) return questionOpen(piece) ?? refuse(nothing);
  const step = stepOf(piece, id, 'Not answered');
  if (isOutcome(step)) return step;
  const asking = askingSteps(piece);
  return (
    asking.find((each) => each.id === step.id) ??
    refuse(
      asking.length === 0
        ? nothing
        : `Not answered: ${step.name} on ${called(piece)} asks nothing.`,
      asking.map(({ name }) => name),
    )
  );
}
