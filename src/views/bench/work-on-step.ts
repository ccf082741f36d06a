import {
  isDone,
  questionOf,
  sessionHolding,
  stepUnderWay,
  type Piece,
} from '../../tracker/bench/index.ts';
import { pressOnLocked } from '../parts/second-press.ts';
import type { BenchPort } from '../port.ts';
import type { Step, View } from '../screen.ts';
import type { BenchState } from './bench-state.ts';
import { partAfter } from './part-after-part.ts';

type Work = {
  readonly kept: BenchState;
  readonly piece: Piece;
  readonly part: string | null;
  readonly view: View;
  readonly port: BenchPort;
  readonly act: () => Step<BenchState>;
};

/**
 * A key that begins or ends the step under way. A step that waits for its trial is refused, and the same key again asks
 * why without it; a step with a question asks it once it is done.
 */
export function workOnStep({ kept, piece, part, view, port, act }: Work): Step<BenchState> {
  const step = stepUnderWay(piece, part, sessionHolding(view.snapshot.bench, piece.id));
  const locked = pressOnLocked(piece, part, step, kept.refused, view.now);
  if (locked !== null && 'open' in locked) return { state: kept, open: locked.open };
  if (locked !== null) return { ...act(), state: { ...kept, refused: locked.remember } };
  const acted = act();
  const after = port.snapshot().bench.pieces.get(piece.id);
  if (after === undefined || step === null) return acted;
  // Done for one part, the keys go on with the next.
  const onward = partAfter(after, step.id, part);
  const done =
    onward === part ? acted : { ...acted, state: { ...(acted.state ?? kept), part: onward } };
  if (!isDone(after, step.id, null)) return done;
  const asks = questionOf(after, step.id);
  return asks === null
    ? done
    : { ...done, open: { is: 'question', piece: piece.id, step: asks.id } };
}
