import { forEitherWood } from '../windows/either-wood.ts';
import type { Milestone, WindowRule } from '../windows/model.ts';
import type { Product } from '../trade/schedule.ts';
import type { Instant } from '../time/index.ts';
import type { Finish, Piece, PlannedStep, Session, Stamp } from './piece.ts';
import { countsFor } from './progress.ts';

/** A piece with its records sorted by step, so that its windows are worked out in one go through them. */
export type WorkedPiece = {
  readonly piece: Piece;
  /** Those that the piece has a share in. */
  readonly sessions: readonly Session[];
  readonly rules: ReadonlyMap<string, readonly WindowRule[]>;
  readonly stamps: ReadonlyMap<string, readonly Stamp[]>;
  readonly finishes: ReadonlyMap<string, readonly Finish[]>;
  readonly place: ReadonlyMap<string, number>;
  /** When each step first touched the surface, and when anything was last recorded on it. */
  readonly touches: ReadonlyMap<string, Touches>;
};

type Touches = { readonly first: Instant | null; readonly last: Instant };

/** The rules a step starts: its product's for the piece's wood, and its own. */
export function rulesOf(piece: Piece, step: PlannedStep): readonly WindowRule[] {
  const product = step.product === undefined ? undefined : piece.products[step.product];
  if (product === undefined) return step.windows;
  return [...product.windows, ...rulesForWood(product, piece.wood), ...step.windows];
}

function rulesForWood({ byWood }: Product, wood: Piece['wood']): readonly WindowRule[] {
  const { soft = [], hard = [] } = byWood ?? {};
  if (wood === 'soft') return soft;
  return wood === 'hard' ? hard : forEitherWood(soft, hard);
}

export const workedPiece = (piece: Piece, sessions: readonly Session[]): WorkedPiece => ({
  piece,
  sessions: sessions.filter(({ targets }) => targets.some((target) => target.piece === piece.id)),
  rules: new Map(piece.steps.map((step) => [step.id, rulesOf(piece, step)])),
  stamps: Map.groupBy(piece.stamps, ({ step }) => step),
  finishes: Map.groupBy(piece.finishes, ({ step }) => step),
  place: new Map(piece.steps.map(({ id }, index) => [id, index])),
  touches: touchesOf(piece),
});

/** Mixing a pot and washing it out don't touch the surface. */
const isOnSurface = (record: Stamp | Finish): boolean =>
  !('event' in record) || (record.event !== 'mixed' && record.event !== 'washed-out');

function touchesOf({ stamps, finishes }: Piece): ReadonlyMap<string, Touches> {
  const touches = new Map<string, Touches>();
  for (const record of [...stamps, ...finishes]) {
    const before = touches.get(record.step);
    const here = isOnSurface(record) ? record.at : null;
    const first = before?.first ?? here;
    touches.set(record.step, {
      first: first === null || here === null ? first : Math.min(first, here),
      last: Math.max(before?.last ?? record.at, record.at),
    });
  }
  return touches;
}

export const stampsOn = ({ stamps }: WorkedPiece, step: string): readonly Stamp[] =>
  stamps.get(step) ?? [];

/** The last finish of a step that counts for a part. */
export const finishOf = (
  { finishes }: WorkedPiece,
  step: string,
  part: string | null,
): Finish | undefined => finishes.get(step)?.findLast((each) => countsFor(each.part, part));

export const laterSteps = ({ piece, place }: WorkedPiece, step: string): readonly PlannedStep[] =>
  piece.steps.slice((place.get(step) ?? -1) + 1);

/** A later step ends a milestone when it waited for it, or starts that same milestone anew (another coat). */
export const endsMilestone = (
  { rules }: WorkedPiece,
  later: PlannedStep,
  milestone: Milestone,
): boolean =>
  later.needs.includes(milestone) ||
  (rules.get(later.id) ?? []).some((rule) => rule.milestone === milestone);

/** When something was first done to the surface in a step; mixing and washing out are not. */
export function firstTouch(worked: WorkedPiece, step: string, part: string | null): Instant | null {
  if (part === null) return worked.touches.get(step)?.first ?? null;
  const touches = [...stampsOn(worked, step), ...(worked.finishes.get(step) ?? [])].filter(
    (each) => isOnSurface(each) && countsFor(each.part, part),
  );
  return touches.length === 0 ? null : Math.min(...touches.map((touch) => touch.at));
}
