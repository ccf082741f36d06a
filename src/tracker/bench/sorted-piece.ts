import { forEitherWood } from '../windows/either-wood.ts';
import type { Milestone, WindowRule } from '../windows/model.ts';
import type { Product, Step } from '../trade/schedule.ts';
import type { Instant } from '../time/index.ts';
import type { Session } from './bench.ts';
import type { Finish, Piece, PlannedStep, Stamp } from './piece.ts';
import { byStep } from './by-step.ts';
import { countsFor } from './progress.ts';

/** A piece with its records sorted by step, so that its windows are worked out in one go through them. */
export type SortedPiece = {
  readonly piece: Piece;
  /** Those that the piece has a share in. */
  readonly sessions: readonly Session[];
  readonly rules: (step: PlannedStep) => readonly WindowRule[];
  readonly stamps: ReadonlyMap<string, readonly Stamp[]>;
  readonly finishes: ReadonlyMap<string, readonly Finish[]>;
  readonly place: ReadonlyMap<string, number>;
  /** What steps that are still to be done wait for; null once none is left. */
  readonly awaited: ReadonlySet<Milestone> | null;
  /** When each step first touched the surface, and when anything was last recorded on it. */
  readonly touches: ReadonlyMap<string, Touches>;
};

type Touches = { readonly first: Instant | null; readonly last: Instant };

/** The rules a step starts: its product's for the piece's wood, and its own. */
export function rulesOf(
  piece: Pick<Piece, 'products' | 'wood'>,
  step: Step,
): readonly WindowRule[] {
  const product = step.product === undefined ? undefined : piece.products[step.product];
  if (product === undefined) return step.windows;
  // A test patch is timed like the whole, but it is no coat that a later step could wait for.
  if (step.trialFor !== undefined)
    return [
      ...[...product.windows, ...rulesForWood(product, piece.wood)].filter(
        ({ milestone }) => milestone === undefined,
      ),
      ...step.windows,
    ];
  return [...product.windows, ...rulesForWood(product, piece.wood), ...step.windows];
}

function rulesForWood({ byWood }: Product, wood: Piece['wood']): readonly WindowRule[] {
  const { soft = [], hard = [] } = byWood ?? {};
  if (wood === 'soft') return soft;
  return wood === 'hard' ? hard : forEitherWood(soft, hard);
}

/** Sorts the records of a piece. `sessions` are those of the whole bench. */
export function sortedPiece(piece: Piece, sessions: readonly Session[]): SortedPiece {
  const rules = new Map<PlannedStep, readonly WindowRule[]>();
  const finishes = byStep(piece.finishes);
  const left = piece.steps.filter(({ id, skipped }) => !skipped && !finishes.has(id));
  return {
    piece,
    sessions: sessionsShared(sessions, piece.id),
    rules: (step) => {
      let own = rules.get(step);
      if (own === undefined) rules.set(step, (own = rulesOf(piece, step)));
      return own;
    },
    stamps: byStep(piece.stamps),
    finishes,
    awaited: left.length === 0 ? null : new Set(left.flatMap(({ needs }) => needs)),
    place: new Map(piece.steps.map(({ id }, index) => [id, index])),
    touches: touchesOf(piece),
  };
}

const knownSessions = new WeakMap<readonly Session[], ReadonlyMap<string, readonly Session[]>>();

/** Those of all sessions in which a piece has a share. */
export const sessionsShared = (sessions: readonly Session[], piece: string): readonly Session[] =>
  sessionsByPiece(sessions).get(piece) ?? [];

/** Sorted once for each state of the bench, as every piece of it asks for its own. */
function sessionsByPiece(sessions: readonly Session[]): ReadonlyMap<string, readonly Session[]> {
  const before = knownSessions.get(sessions);
  if (before !== undefined) return before;
  const sorted = new Map<string, Session[]>();
  for (const session of sessions) {
    for (const { piece } of session.targets) {
      const own = sorted.get(piece);
      if (own === undefined) sorted.set(piece, [session]);
      // A session may be for several steps of one piece.
      else if (own.at(-1) !== session) own.push(session);
    }
  }
  knownSessions.set(sessions, sorted);
  return sorted;
}

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

/** Everything stamped on one step, in the order of telling. */
export const stampsOn = ({ stamps }: SortedPiece, step: string): readonly Stamp[] =>
  stamps.get(step) ?? [];

/** The last finish of a step that counts for a part. */
export const finishOf = (
  { finishes }: SortedPiece,
  step: string,
  part: string | null,
): Finish | undefined => finishes.get(step)?.findLast((each) => countsFor(each.part, part));

/** The steps that come after one in the piece's order, skipped ones too. */
export const laterSteps = ({ piece, place }: SortedPiece, step: string): readonly PlannedStep[] =>
  piece.steps.slice((place.get(step) ?? -1) + 1);

/** A later step ends a milestone when it waited for it, or starts that same milestone anew (another coat). */
export const endsMilestone = (
  { rules }: SortedPiece,
  later: PlannedStep,
  milestone: Milestone,
): boolean =>
  later.needs.includes(milestone) || rules(later).some((rule) => rule.milestone === milestone);

/** When something was first done to the surface in a step; mixing and washing out are not. */
export function firstTouch(sorted: SortedPiece, step: string, part: string | null): Instant | null {
  if (part === null) return sorted.touches.get(step)?.first ?? null;
  const touches = [...stampsOn(sorted, step), ...(sorted.finishes.get(step) ?? [])].filter(
    (each) => isOnSurface(each) && countsFor(each.part, part),
  );
  return touches.length === 0 ? null : Math.min(...touches.map((touch) => touch.at));
}
