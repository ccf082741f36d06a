import type { CalendarDay, Instant } from '../time/index.ts';
import type { BenchFact } from './facts.ts';
import type { Piece } from './piece.ts';

export type HoldRow = {
  readonly row: 'hold';
  readonly at: Instant;
  readonly reason: string;
  readonly askAgain: CalendarDay | null;
  /** Null while it lasts. */
  readonly liftedAt: Instant | null;
};

/** Changes of the plan, and comings and goings. `name` is the step's, where it is about one. */
export type PlanRow = {
  readonly row: 'plan';
  readonly at: Instant;
  readonly change:
    | 'put in'
    | 'skipped'
    | 'not skipped'
    | 'reworded'
    | 'answered'
    | 'without trial'
    | 'left the bench'
    | 'put back'
    | 'removed';
  readonly name: string | null;
};

/** Null for a step that the piece hasn't. */
export const stepName = (piece: Piece, step: string | null): string | null =>
  piece.steps.find(({ id }) => id === step)?.name ?? null;

/** The times that a piece was on hold, one row each; `liftedAt` null where it still is. */
export function holdRows(piece: Piece, facts: readonly BenchFact[]): readonly HoldRow[] {
  const rows: HoldRow[] = [];
  for (const fact of facts) {
    const last = rows.at(-1);
    if (fact.kind === 'hold-placed' && fact.body.piece === piece.id) {
      const { reason, askAgain } = fact.body;
      // A hold that replaces another ends it.
      if (last?.liftedAt === null) rows[rows.length - 1] = { ...last, liftedAt: fact.at };
      rows.push({ row: 'hold', at: fact.at, reason, askAgain, liftedAt: null });
    } else if (fact.kind === 'hold-lifted' && fact.body.piece === piece.id && last !== undefined) {
      rows[rows.length - 1] = { ...last, liftedAt: last.liftedAt ?? fact.at };
    }
  }
  const { hold } = piece;
  // Told by a script: it stands on the piece and in no group made by hand.
  if (hold !== null && rows.at(-1)?.at !== hold.since)
    rows.push({ row: 'hold', at: hold.since, ...hold, liftedAt: null });
  return rows;
}

/** A change of the plan as a row of the card; none for facts of another kind or piece. */
export function planRow(piece: Piece, fact: BenchFact): readonly PlanRow[] {
  if (!('piece' in fact.body) || fact.body.piece !== piece.id) return [];
  const plan = (change: PlanRow['change'], name: string | null = null): readonly PlanRow[] => [
    { row: 'plan', at: fact.at, change, name },
  ];
  switch (fact.kind) {
    case 'step-inserted':
      return plan('put in', fact.body.step.name);
    case 'step-skipped':
      return plan(
        fact.body.skipped ? 'skipped' : 'not skipped',
        stepName(piece, fact.body.step) ?? fact.body.step,
      );
    case 'step-reworded':
      return plan('reworded', fact.body.name);
    case 'question-answered': {
      const { step, answer } = fact.body;
      const asks = piece.steps.find(({ id }) => id === step)?.asks;
      const says = asks?.answers.find(({ id }) => id === answer)?.says ?? answer ?? 'no answer';
      return plan('answered', `${stepName(piece, step) ?? step}: ${says}`);
    }
    case 'trial-waived':
      return plan(
        'without trial',
        `${stepName(piece, fact.body.step) ?? fact.body.step}: ${fact.body.reason}`,
      );
    case 'piece-left-bench':
      return plan('left the bench');
    case 'piece-put-back':
      return plan('put back');
    case 'piece-removed':
      return plan('removed');
    default:
      return [];
  }
}
