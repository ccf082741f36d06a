import type { Bench, Piece, PlannedStep } from './piece.ts';
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

/** A step that is not in hand is begun before it can be done; a stroke begins it by itself. */
export function nextAct(bench: Bench, piece: Piece, part: string | null): NextAct {
  const session = sessionHolding(bench, piece.id);
  const step = stepUnderWay(piece, part, session);
  if (step === null) return { act: 'nothing left', says: 'every step is done' };
  const next = nextStamp(step, stampsOf(piece, step.id, part));
  if (next.kind === 'stamp') return { act: 'stamp', step, next, says: next.says };
  const begun =
    isInHandFor(session, piece.id, step.id, part) || stampsOf(piece, step.id, part).length > 0;
  if (!begun) return { act: 'pick up', step, says: `pick up ${step.name}` };
  return { act: 'done', step, pass: next.pass, says: next.says };
}
