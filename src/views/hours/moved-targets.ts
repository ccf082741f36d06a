import type { Session, Target } from '../../tracker/bench/index.ts';

/** What a session was really for, where that is not what was recorded: `part` and `step` as they were where not given. */
export type ReallyWorked = {
  /** The piece that is on record. */
  readonly from: string;
  /** The piece that was in hand. */
  readonly to: string;
  readonly part?: string | undefined;
  /** Null for work that belongs to no step. */
  readonly step?: string | null | undefined;
};

/** The session's work on one piece made other work, or work on another; what it was on further pieces stays. */
export function movedTargets(
  { targets }: Session,
  { from, to, part, step }: ReallyWorked,
): readonly Target[] {
  // A part or a step of another piece can't stay.
  const isSame = from === to;
  const own = targets
    .filter(({ piece }) => piece === from)
    .map((was): Target => ({
      piece: to,
      part: part ?? (isSame ? was.part : null),
      step: step === undefined ? (isSame ? was.step : null) : step,
    }));
  const once = own.filter(
    (target, place) =>
      own.findIndex((each) => each.part === target.part && each.step === target.step) === place,
  );
  return [...once, ...targets.filter(({ piece }) => piece !== from && piece !== to)];
}
