import type { Instant, Milliseconds } from '../time/index.ts';
import { opensAt, stretchAt } from '../windows/evaluate.ts';
import type { Loss, Milestone, Window, WindowKind } from '../windows/model.ts';
import type { Piece } from './piece.ts';

/** How a window ended: what it was for, and whether it was met. */
export type CardOutcome = {
  readonly kind: WindowKind;
  readonly verb: string;
  readonly milestone: Milestone | null;
  readonly part: string | null;
  readonly outcome: 'in time' | 'early' | 'late' | 'kept off';
  /** From its beginning to what ended it. */
  readonly after: Milliseconds;
  readonly opened: Instant | null;
  readonly loss: Loss;
  /** The extra work or rescue that lateness called for. */
  readonly says: string | null;
};

/** Null for the whole piece, and for a part that it hasn't. */
export const partName = (piece: Piece, part: string | null): string | null =>
  piece.parts.find(({ id }) => id === part)?.name ?? null;

/** A window that is over tells how it was met; one that runs out by itself has nothing to meet. */
export function outcomeOf(window: Window, piece: Piece, now: Instant): readonly CardOutcome[] {
  const { rule, subject, closedAt, begunAt } = window;
  if (closedAt === null || closedAt > now || rule.closedBy.by === 'nothing') return [];
  // The step was finished without the pass that this one waited for.
  const isLastPass = !piece.stamps.some(
    ({ step, pass }) => step === subject.stepId && pass > subject.pass,
  );
  if (rule.closedBy.by === 'next pass' && isLastPass) return [];
  const stretch = stretchAt(window, closedAt);
  const outcomes = {
    wait: 'early',
    go: 'in time',
    'go after work': 'late',
    late: 'late',
    'keep off': 'kept off',
  } as const;
  return [
    {
      kind: rule.kind,
      verb: rule.verb,
      milestone: rule.milestone ?? null,
      part: partName(piece, subject.partId),
      outcome: outcomes[stretch.meaning],
      after: Math.max(0, closedAt - begunAt),
      opened: opensAt(window),
      loss: stretch.loss,
      says: stretch.says ?? null,
    },
  ];
}
