import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { anywhere, called, factAt, isOutcome } from './context.ts';

/** Keeps a piece, or one session on it, from teaching what is expected of others; or lets it teach again. */
export function leaveOutOfLearning(
  bench: Bench,
  { piece: id, session, leave }: Extract<Intent, { do: 'leave out of learning' }>,
  context: IntentContext,
): Outcome {
  const not = leave ? 'Not left out' : 'Not taken in';
  const piece = anywhere(bench, id, not);
  if (isOutcome(piece)) return piece;
  const found = session === null ? piece : bench.sessions.find((each) => each.id === session);
  if (found === undefined) return refuse(`${not}: there is no session "${session}".`);
  const isOut = found.keptFromLearning === true;
  const what = session === null ? called(piece) : `this session on ${called(piece)}`;
  if (leave && isOut) return refuse(`${not}: ${what} is left out of learning already.`);
  if (!leave && !isOut) return refuse(`${not}: ${what} teaches already.`);
  return accept(
    [
      factAt(context, {
        kind: 'kept-from-learning',
        body: { piece: piece.id, session, kept: leave },
      }),
    ],
    `${what} ${leave ? 'left out of learning' : 'taken into learning again'}`,
    piece.id,
  );
}
