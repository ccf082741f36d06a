import {
  canBeTried,
  countsFor,
  standingOf,
  type Piece,
  type PlannedStep,
} from '../../tracker/bench/index.ts';
import type { Window } from '../../tracker/windows/index.ts';
import type { View } from '../screen.ts';
import type { TroubleState } from '../screens.ts';

/** What was tried: the window that the piece's row shows, or the first that can be tried, and the step that began it. */
export type Tried = {
  readonly piece: Piece;
  readonly step: PlannedStep;
  readonly window: Window;
};

/** Null where nothing on the piece is drying or setting. */
export function triedOn({ piece: id, part }: TroubleState, view: View): Tried | null {
  const { bench, sense } = view.snapshot;
  const piece = bench.pieces.get(id);
  if (piece?.place !== 'bench') return null;
  const standing = standingOf(bench, piece, view.now, sense);
  const tried = standing.windows.filter(
    (each) => canBeTried(each) && (part === null || countsFor(each.subject.partId, part)),
  );
  const window = tried.find(({ key }) => key === standing.window?.key) ?? tried[0];
  const step = piece.steps.find((each) => each.id === window?.subject.stepId);
  return window === undefined || step === undefined ? null : { piece, step, window };
}
