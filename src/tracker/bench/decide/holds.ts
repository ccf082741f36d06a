import { isCalendarDay } from '../../time/index.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { called, factAt, isOutcome, onBench } from './context.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** A piece waits for something that has no clock, to be asked for again on a day from today on, or never. */
export function placeHold(
  bench: Bench,
  intent: Asked<'place hold'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not on hold');
  if (isOutcome(piece)) return piece;
  const reason = intent.reason.trim();
  if (reason === '')
    return refuse('Not on hold: say what it waits for, so that you are asked for it.');
  if (intent.askAgain !== null && !isCalendarDay(intent.askAgain)) {
    return refuse(`Not on hold: "${intent.askAgain}" is no date; write it as ${context.today}.`);
  }
  if (intent.askAgain !== null && intent.askAgain < context.today) {
    return refuse(`Not on hold: ${intent.askAgain} has passed; ask again on a day to come.`);
  }
  return accept(
    [
      factAt(context, {
        kind: 'hold-placed',
        body: { piece: piece.id, reason, askAgain: intent.askAgain },
      }),
    ],
    `hold on ${called(piece)}: ${reason}`,
    piece.id,
  );
}

/** A piece has come in from the cold, colder than the air about it. */
export function carryIn(bench: Bench, intent: Asked<'carry in'>, context: IntentContext): Outcome {
  const piece = onBench(bench, intent.piece, 'Not noted');
  if (isOutcome(piece)) return piece;
  return accept(
    [factAt(context, { kind: 'carried-in', body: { piece: piece.id } })],
    `${called(piece)} carried in from the cold`,
    piece.id,
  );
}

/** What a piece was on hold for has come. */
export function liftHold(
  bench: Bench,
  intent: Asked<'lift hold'>,
  context: IntentContext,
): Outcome {
  const piece = onBench(bench, intent.piece, 'Not lifted');
  if (isOutcome(piece)) return piece;
  if (piece.hold === null) return refuse(`Not lifted: ${called(piece)} is not on hold.`);
  return accept(
    [factAt(context, { kind: 'hold-lifted', body: { piece: piece.id } })],
    `hold lifted on ${called(piece)}`,
    piece.id,
  );
}
