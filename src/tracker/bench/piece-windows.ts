import type { Happenings } from '../windows/edges.ts';
import { workOutWindow } from '../windows/evaluate.ts';
import { senseWithOwnTime } from '../windows/own-time.ts';
import type { EdgeSense, Window, WindowIdentity, WindowRule } from '../windows/model.ts';
import { happeningsOf, keyOf } from './happenings.ts';
import type { Bench, DryingTimes, Session } from './bench.ts';
import type { Piece, PlannedStep, Stamp } from './piece.ts';
import { countsFor, passCalled, passUnderWay } from './progress.ts';
import { canMatter, endOf, withWorkDone } from './window-closing.ts';
import { windowOwners, type WindowOwner } from './window-owners.ts';
import { stampsOn, sortedPiece, type SortedPiece } from './sorted-piece.ts';

export { rulesOf } from './sorted-piece.ts';

/** All windows that a piece's stamps have begun, also those that are over. */
export const windowsOfPiece = (
  piece: Piece,
  sessions: readonly Session[],
  sense: EdgeSense,
  drying?: DryingTimes,
): readonly Window[] => workedOut(piece, sessions, { sense, drying }, () => true);

/**
 * The few of them that a bench asks for: not those that its latest records have ended, and not the milestones that
 * nobody waits for.
 */
export const awaitedWindowsOfPiece = (
  piece: Piece,
  sessions: readonly Session[],
  sense: EdgeSense,
  drying?: DryingTimes,
): readonly Window[] => workedOut(piece, sessions, { sense, drying }, canMatter);

/** What windows are worked out by: the shop's zone and air, and what checks have taught. */
type Rests = { readonly sense: EdgeSense; readonly drying: DryingTimes | undefined };

/** Whether the windows of a rule are wanted. */
type Wanted = (piece: SortedPiece, step: PlannedStep, rule: WindowRule) => boolean;

function workedOut(
  piece: Piece,
  sessions: readonly Session[],
  rests: Rests,
  isWanted: Wanted,
): readonly Window[] {
  if (piece.stamps.length === 0 && piece.finishes.length === 0) return [];
  const sorted = sortedPiece(piece, sessions);
  return piece.steps.flatMap((step) => windowsOfStep(sorted, step, rests, isWanted));
}

type Known = WeakMap<
  Piece,
  Rests & { readonly basis: readonly unknown[]; readonly windows: readonly Window[] }
>;
const knownAll: Known = new WeakMap();
const knownAwaited: Known = new WeakMap();

/**
 * The same for a piece of a folded bench, worked out once: windows don't depend on the present, and folding keeps a
 * piece's object just as long as no fact touches it or its sessions.
 */
export const windowsOf = (bench: Bench, piece: Piece, sense: EdgeSense): readonly Window[] =>
  workedOutOnce(knownAll, windowsOfPiece, bench, piece, sense);

/** The awaited ones, likewise. */
export const awaitedWindowsOf = (bench: Bench, piece: Piece, sense: EdgeSense): readonly Window[] =>
  workedOutOnce(knownAwaited, awaitedWindowsOfPiece, bench, piece, sense);

function workedOutOnce(
  known: Known,
  workOut: typeof windowsOfPiece,
  bench: Bench,
  piece: Piece,
  sense: EdgeSense,
): readonly Window[] {
  const { drying } = bench;
  const before = known.get(piece);
  const isSameSense = before?.sense === sense;
  if (isSameSense && before.drying === drying) return before.windows;
  const basis = basisOf(piece, drying);
  // What was learned of products that are not on this piece leaves its windows as they are.
  const windows =
    isSameSense && before.basis.every((each, i) => each === basis[i])
      ? before.windows
      : workOut(piece, bench.sessions, sense, drying);
  known.set(piece, { sense, drying, basis, windows });
  return windows;
}

/** As many as it has products, also before anything was put on: a piece keeps its object while it keeps those. */
const basisOf = (piece: Piece, drying: DryingTimes | undefined): readonly unknown[] =>
  Object.values(piece.products).map((product) => drying?.basis(product));

function windowsOfStep(
  sorted: SortedPiece,
  step: PlannedStep,
  rests: Rests,
  isWanted: Wanted,
): readonly Window[] {
  const stamps = stampsOn(sorted, step.id);
  if (stamps.length === 0 && !sorted.finishes.has(step.id)) return [];
  // What was mixed in a shared pot runs in the shop, not on the piece.
  const isShared = stamps.some(({ pot }) => pot !== undefined);
  const rules = sorted
    .rules(step)
    .filter((rule) => !(isShared && rule.kind === 'pot') && isWanted(sorted, step, rule));
  if (rules.length === 0) return [];
  return windowOwners(sorted.piece, step).flatMap((owner) => {
    const ofOwner = stamps.filter((stamp) => countsFor(stamp.part, owner.part));
    return rules.flatMap((rule) =>
      windowsOfRule(sorted, { step, owner, stamps: ofOwner }, rule, rests),
    );
  });
}

/** A step that was begun, for one of those who have windows of their own on it. */
type Begun = {
  readonly step: PlannedStep;
  readonly owner: WindowOwner;
  readonly stamps: readonly Stamp[];
};

function windowsOfRule(
  sorted: SortedPiece,
  begun: Begun,
  rule: WindowRule,
  { sense, drying }: Rests,
): readonly Window[] {
  const { piece } = sorted;
  const { step, owner, stamps } = begun;
  const product = step.product === undefined ? undefined : piece.products[step.product];
  const own = (product === undefined ? null : drying?.own(product, rule)) ?? undefined;
  const ruleSense = senseWithOwnTime(sense, rule, own);
  return subjectsOf(rule, stamps).flatMap(({ pass, section }): readonly Window[] => {
    // Between passes there is something to wait for only while another pass is to come.
    if (rule.closedBy.by === 'next pass' && pass >= (step.passes ?? 1)) return [];
    const subject = { pieceId: piece.id, stepId: step.id, partId: owner.part, pass, section };
    const identity = { key: keyOf(rule, subject, owner.keyPart), rule, subject };
    const happenings = happeningsOf(sorted, step, identity);
    const window = workOutWindow(identity, happenings, ruleSense);
    if (window === null) return [];
    return [
      {
        ...window,
        closedAt: endOf(sorted, step, window, { stamps, happenings }) ?? window.closedAt,
        stretches: withWorkDone(sorted, step, window),
        ...(rule.closedBy.by === 'next pass' ? { nextPass: passCalled(step, pass + 1) } : {}),
        ...(own === undefined ? {} : { own }),
      },
    ];
  });
}

function subjectsOf(
  rule: WindowRule,
  stamps: readonly Stamp[],
): readonly { readonly pass: number; readonly section: number | null }[] {
  switch (rule.scope) {
    case 'step':
      return [{ pass: 1, section: null }];
    case 'pass':
      return Array.from({ length: passUnderWay(stamps) }, (_, index) => ({
        pass: index + 1,
        section: null,
      }));
    case 'section': {
      const seen = new Map<string, { pass: number; section: number }>();
      for (const { pass, section } of stamps) {
        if (section !== null) seen.set(`${pass}/${section}`, { pass, section });
      }
      return [...seen.values()];
    }
  }
}

/** Everything on which the edges of a window hang; null where its step is not on the piece. */
export function happeningsOfWindow(
  piece: Piece,
  sessions: readonly Session[],
  window: WindowIdentity,
): Happenings | null {
  const step = piece.steps.find(({ id }) => id === window.subject.stepId);
  return step === undefined ? null : happeningsOf(sortedPiece(piece, sessions), step, window);
}
