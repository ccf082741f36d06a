import type { Expectation } from '../bench/facts.ts';
import type { Bench } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { rulesOf } from '../bench/piece-windows.ts';
import { standingsAt } from '../bench/standing.ts';
import { foreseenOn } from '../estimate/expected.ts';
import type { Instant } from '../time/index.ts';
import { closesAt, stateAt } from '../windows/evaluate.ts';
import type { EdgeSense, TimedStretch, Window } from '../windows/model.ts';

/** Something that can be done now and saves what would be lost overnight. */
export type Saving = {
  readonly piece: Piece;
  readonly window: Window;
  /** The step to do, and the minutes it takes; null where a single act is enough (wash out, wipe off). */
  readonly step: PlannedStep | null;
  readonly minutes: Expectation | null;
  /** By when. */
  readonly by: Instant;
  /** What begins then if it isn't done. */
  readonly saves: TimedStretch;
};

/**
 * What is worth doing before the shop is left until `till`, what closes first coming first. A step that would itself
 * leave something behind that spoils is never advised, nor one on a piece that is on hold.
 */
export function beforeYouGo(
  bench: Bench,
  now: Instant,
  till: Instant,
  sense: EdgeSense,
): readonly Saving[] {
  const savings = standingsAt(bench, now, sense).flatMap(({ piece, step, window }): Saving[] => {
    if (piece === null || piece.hold !== null || window === null) return [];
    const state = stateAt(window, now);
    const closing = closesAt(window, now);
    if ((state !== 'open' && state !== 'closing') || closing === null || closing.at > till)
      return [];
    const saves = closing.next;
    if (saves.loss === 'costs nothing' && saves.meaning !== 'keep off') return [];
    const base = { piece, window, by: closing.at, saves };
    const { milestone } = window.rule;
    if (milestone === undefined) return [{ ...base, step: null, minutes: null }];
    if (step === null || !step.needs.includes(milestone) || mayBeLost(piece, step)) return [];
    return [{ ...base, step, minutes: foreseenOn(bench, step, piece) }];
  });
  return savings.sort((a, b) => a.by - b.by);
}

const mayBeLost = (piece: Piece, step: PlannedStep): boolean =>
  rulesOf(piece, step).some(({ stretches }) => stretches.some(({ loss }) => loss === 'spoils'));
