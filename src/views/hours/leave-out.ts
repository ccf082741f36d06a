import type { Milliseconds } from '../../tracker/time/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { messageOf } from '../parts/message-lines.ts';
import type { BenchPort } from '../port.ts';
import { refused, said, type Step, type View } from '../screen.ts';
import type { HoursState } from '../screens.ts';
import { whatIfWords } from './what-if-words.ts';

/** A second press within this time means it. */
const meansIt: Milliseconds = 30_000;

/**
 * Leaves a piece out of learning, or takes it in again. The first press says what that would do, the second does it.
 */
export function leaveOut(
  state: HoursState,
  id: string,
  { now, snapshot }: View,
  port: BenchPort,
): Step<HoursState> {
  const piece = snapshot.bench.pieces.get(id);
  if (piece === undefined)
    return {
      message: refused(
        'Not left out: it has gone to history. Put it back on the bench first, or: recoat leave-out NAME',
      ),
    };
  const leave = piece.keptFromLearning !== true;
  const intent = { do: 'leave out of learning', piece: id, session: null, leave } as const;
  const { leaving, ...rest } = state;
  if (leaving?.piece === id && now - leaving.at <= meansIt)
    return { state: rest, message: messageOf(port.act(intent)) };
  const effect = whatIfWords(snapshot.bench, intent);
  const what = leave
    ? `leave ${calledPiece(piece)} out of learning`
    : `let ${calledPiece(piece)} teach`;
  return {
    state: { ...state, leaving: { piece: id, at: now } },
    message: said(`x again: ${what}${effect === null ? '' : `; ${effect}`}`),
  };
}
