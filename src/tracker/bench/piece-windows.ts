import type { Happenings } from '../windows/edges.ts';
import { workOutWindow } from '../windows/evaluate.ts';
import { senseWithOwnTime } from '../windows/own-time.ts';
import type { EdgeSense, Window, WindowRule } from '../windows/model.ts';
import { happeningsOf, keyOf } from './happenings.ts';
import type { Bench, DryingTimes, Piece, PlannedStep, Session, Stamp } from './piece.ts';
import { countsFor, passCalled, passUnderWay } from './progress.ts';
import { closing, canMatter, withWorkDone } from './window-closing.ts';
import { windowOwners } from './worked-apart.ts';
import { stampsOn, workedPiece, type WorkedPiece } from './worked-piece.ts';

export { rulesOf } from './worked-piece.ts';

/** All windows that a piece's stamps have begun, also those that are over. */
export const windowsOfPiece = (
  piece: Piece,
  sessions: readonly Session[],
  sense: EdgeSense,
  drying?: DryingTimes,
): readonly Window[] => worked(piece, sessions, { sense, drying }, () => true);

/**
 * The few of them that a bench asks for: not those that its latest records have ended, and not the milestones that
 * nobody waits for.
 */
export const awaitedWindowsOfPiece = (
  piece: Piece,
  sessions: readonly Session[],
  sense: EdgeSense,
  drying?: DryingTimes,
): readonly Window[] =>
  worked(piece, sessions, { sense, drying }, (all, step, rule) => canMatter(all, step, rule));

/** What windows are worked out by: the shop's zone and air, and what checks have taught. */
type Rests = { readonly sense: EdgeSense; readonly drying: DryingTimes | undefined };

function worked(
  piece: Piece,
  sessions: readonly Session[],
  rests: Rests,
  counts: (worked: WorkedPiece, step: PlannedStep, rule: WindowRule) => boolean,
): readonly Window[] {
  if (piece.stamps.length === 0 && piece.finishes.length === 0) return [];
  const all = workedPiece(piece, sessions);
  return piece.steps.flatMap((step) => windowsOfStep(all, step, rests, counts));
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
  worked: WorkedPiece,
  step: PlannedStep,
  { sense, drying }: Rests,
  counts: (worked: WorkedPiece, step: PlannedStep, rule: WindowRule) => boolean,
): readonly Window[] {
  const { piece } = worked;
  const stamps = stampsOn(worked, step.id);
  if (stamps.length === 0 && !worked.finishes.has(step.id)) return [];
  // What was mixed in a shared pot runs in the shop, not on the piece.
  const isShared = stamps.some(({ pot }) => pot !== undefined);
  const rules = worked
    .rules(step)
    .filter((rule) => !(isShared && rule.kind === 'pot') && counts(worked, step, rule));
  if (rules.length === 0) return [];
  const product = step.product === undefined ? undefined : piece.products[step.product];
  const windows: Window[] = [];
  for (const { part, keyPart } of windowOwners(piece, step)) {
    const stampsOfPart = stamps.filter((stamp) => countsFor(stamp.part, part));
    const passes = passUnderWay(stampsOfPart);
    for (const rule of rules) {
      const own = (product === undefined ? null : drying?.own(product, rule)) ?? undefined;
      const ruleSense = senseWithOwnTime(sense, rule, own);
      for (const { pass, section } of subjectsOf(rule, stampsOfPart, passes)) {
        // Between passes there is something to wait for only while another pass is to come.
        if (rule.closedBy.by === 'next pass' && pass >= (step.passes ?? 1)) continue;
        const subject = { pieceId: piece.id, stepId: step.id, partId: part, pass, section };
        const key = keyOf(rule, subject, keyPart);
        const happenings = happeningsOf(worked, step, rule, subject, key);
        const begun = workOutWindow(rule, subject, key, happenings, null, ruleSense);
        if (begun === null) continue;
        const closedAt = closing(worked, step, begun, stampsOfPart, happenings) ?? begun.closedAt;
        windows.push({
          ...begun,
          closedAt,
          stretches: withWorkDone(worked, step, begun),
          ...(rule.closedBy.by === 'next pass' ? { nextPass: passCalled(step, pass + 1) } : {}),
          ...(own === undefined ? {} : { own }),
        });
      }
    }
  }
  return windows;
}

function subjectsOf(
  rule: WindowRule,
  stamps: readonly Stamp[],
  passes: number,
): readonly { readonly pass: number; readonly section: number | null }[] {
  switch (rule.scope) {
    case 'step':
      return [{ pass: 1, section: null }];
    case 'pass':
      return Array.from({ length: passes }, (_, index) => ({ pass: index + 1, section: null }));
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
  { rule, subject, key }: Pick<Window, 'rule' | 'subject' | 'key'>,
): Happenings | null {
  const step = piece.steps.find(({ id }) => id === subject.stepId);
  if (step === undefined) return null;
  return happeningsOf(workedPiece(piece, sessions), step, rule, subject, key);
}
