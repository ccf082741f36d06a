import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import type { Piece, PlannedStep } from '../piece.ts';
import { leftOutWords, originalOf } from '../left-out.ts';
import { plainStep } from '../plain-step.ts';
import { isDone } from '../progress.ts';
import { called, factAt, isOutcome, onBench, stepOf } from './context.ts';
import { wrongNewStep } from './new-step.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** A step can't be put before one that is done already: it would never come. */
function placeable(piece: Piece, before: string | null, not: string): Outcome | null {
  if (before === null) return null;
  const step = stepOf(piece, before, not);
  if (isOutcome(step)) return step;
  return isDone(piece, step.id, null)
    ? refuse(`${not}: ${step.name} is done; put it before one that is still to do.`)
    : null;
}

const beforeName = (piece: Piece, before: string | null): string => {
  const step = piece.steps.find((each) => each.id === before);
  return step === undefined ? 'at the end' : `before ${step.name}`;
};

/** Puts a new step before another, or last. */
export function insertStep(
  bench: Bench,
  intent: Asked<'insert step'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not inserted');
  if (isOutcome(piece)) return piece;
  const misplaced = placeable(piece, intent.before, 'Not inserted');
  if (misplaced) return misplaced;
  const wrong = wrongNewStep(piece, intent.step, 'Not inserted');
  if (wrong) return wrong;
  const name = intent.step.name.trim();
  const step = { ...intent.step, name, id: context.group };
  return accept(
    [
      factAt(context, {
        kind: 'step-inserted',
        body: { piece: piece.id, step, before: intent.before },
      }),
    ],
    `${name} inserted ${beforeName(piece, intent.before)} on ${called(piece)}`,
    piece.id,
  );
}

/** Puts the same step once more, right after itself: a second bleach round, a third coat. */
export function repeatStep(
  bench: Bench,
  intent: Asked<'repeat step'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not repeated');
  if (isOutcome(piece)) return piece;
  const found = stepOf(piece, intent.step, 'Not repeated');
  if (isOutcome(found)) return found;
  const step = plainStep(found);
  const original = originalOf(found);
  const round =
    piece.steps.filter((each) => each.id === original || each.copyOf === original).length + 1;
  const name = `${step.name.replace(/, again(?: \d+)?$/, '')}, again${round > 2 ? ` ${round - 1}` : ''}`;
  const after = piece.steps.slice(piece.steps.indexOf(found) + 1);
  const before = after.find((each) => !isDone(piece, each.id, null))?.id ?? null;
  return accept(
    [
      factAt(context, {
        kind: 'step-inserted',
        body: {
          piece: piece.id,
          step: { ...step, id: context.group, name },
          before,
          copyOf: original,
        },
      }),
    ],
    `${name}, once more on ${called(piece)}`,
    piece.id,
  );
}

/** Puts a step that is still to do before another, or last. */
export function moveStep(
  bench: Bench,
  intent: Asked<'move step'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not moved');
  if (isOutcome(piece)) return piece;
  const step = stepOf(piece, intent.step, 'Not moved');
  if (isOutcome(step)) return step;
  if (intent.before === step.id) return refuse(`Not moved: ${step.name} stands there already.`);
  if (isDone(piece, step.id, null)) return refuse(`Not moved: ${step.name} is done.`);
  const misplaced = placeable(piece, intent.before, 'Not moved');
  if (misplaced) return misplaced;
  return accept(
    [
      factAt(context, {
        kind: 'step-moved',
        body: { piece: piece.id, step: step.id, before: intent.before },
      }),
    ],
    `${step.name} moved ${beforeName(piece, intent.before)} on ${called(piece)}`,
    piece.id,
  );
}

/** Leaves a step out, or puts it in the list again; against its own rule too. */
export function skipStep(
  bench: Bench,
  intent: Asked<'skip step'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not skipped');
  if (isOutcome(piece)) return piece;
  const step = stepOf(piece, intent.step, 'Not skipped');
  if (isOutcome(step)) return step;
  if (step.skipped === intent.skipped) {
    return refuse(
      `Not ${intent.skipped ? 'skipped' : 'put back'}: ${step.name} ${alreadyWords(piece, step)}.`,
    );
  }
  if (intent.skipped && isDone(piece, step.id, null))
    return refuse(`Not skipped: ${step.name} is done. 0 takes back.`);
  return accept(
    [
      factAt(context, {
        kind: 'step-skipped',
        body: { piece: piece.id, step: step.id, skipped: intent.skipped },
      }),
    ],
    `${step.name} ${intent.skipped ? 'skipped' : 'in the list again'} on ${called(piece)}`,
    piece.id,
  );
}

function alreadyWords(piece: Piece, step: PlannedStep): string {
  if (!step.skipped) return 'is in the list already';
  const why = leftOutWords(piece, step);
  return why === '' ? 'is skipped already' : `is left out already (${why})`;
}

/** Another name for a step of this piece. */
export function rewordStep(
  bench: Bench,
  intent: Asked<'reword step'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not reworded');
  if (isOutcome(piece)) return piece;
  const step = stepOf(piece, intent.step, 'Not reworded');
  if (isOutcome(step)) return step;
  const name = intent.name.trim();
  if (name === '') return refuse('Not reworded: a step needs a name.');
  return accept(
    [factAt(context, { kind: 'step-reworded', body: { piece: piece.id, step: step.id, name } })],
    `${step.name} is now ${name} on ${called(piece)}`,
    piece.id,
  );
}
