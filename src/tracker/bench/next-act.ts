import type { Instant } from '../time/index.ts';
import type { EdgeSense } from '../windows/model.ts';
import type { Bench } from './bench.ts';
import type { Piece, PlannedStep } from './piece.ts';
import { isPastItsLife, openPotOf } from './pot-window.ts';
import { nextStamp, stampsOf, type NextStamp } from './progress.ts';
import { isInHandFor, sessionHolding } from './standing.ts';
import { stepUnderWay } from './step-under-way.ts';

/** What the next-stamp key does to a piece, as the foot line names it. */
export type NextAct =
  | { readonly act: 'pick up'; readonly step: PlannedStep; readonly says: string }
  | {
      readonly act: 'stamp';
      readonly step: PlannedStep;
      readonly next: Extract<NextStamp, { kind: 'stamp' }>;
      readonly says: string;
    }
  | {
      readonly act: 'done';
      readonly step: PlannedStep;
      readonly pass: number;
      readonly says: string;
    }
  | { readonly act: 'nothing left'; readonly says: string };

/** The moment a question is asked about, and what it takes to work out the windows of that moment. */
type Moment = { readonly now: Instant; readonly sense: EdgeSense };

/** Where a pot of its product stands on the bench and lasts, nobody mixes another: the stroke takes from that. */
function withoutMixing(
  bench: Bench,
  piece: Piece,
  step: PlannedStep,
  { now, sense }: Moment,
): PlannedStep {
  const pot = openPotOf(bench, piece.products[step.product ?? '']?.id);
  return pot === null || isPastItsLife(pot, now, sense)
    ? step
    : { ...step, stamps: step.stamps.filter(({ event }) => event !== 'mixed') };
}

/** A step that is not in hand is begun before it can be done; a stroke begins it by itself. */
export function nextAct(bench: Bench, piece: Piece, part: string | null, moment: Moment): NextAct {
  const session = sessionHolding(bench, piece.id);
  const step = stepUnderWay(piece, part, session);
  if (step === null) return { act: 'nothing left', says: 'every step is done' };
  const next = nextStamp(withoutMixing(bench, piece, step, moment), stampsOf(piece, step.id, part));
  if (next.kind === 'stamp') return { act: 'stamp', step, next, says: next.says };
  const hasBegun =
    isInHandFor(session, piece.id, step.id, part) || stampsOf(piece, step.id, part).length > 0;
  if (!hasBegun) return { act: 'pick up', step, says: `pick up ${step.name}` };
  return { act: 'done', step, pass: next.pass, says: next.says };
}
