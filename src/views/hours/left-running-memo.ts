import { piecesOnBench, type Bench, type Piece } from '../../tracker/bench/index.ts';
import { leftRunning, type LeftRunning } from '../../tracker/estimate/index.ts';
import { day, minute, type Instant, type Milliseconds } from '../../tracker/time/index.ts';

/** A session that was perhaps left running, and the piece on which to ask about it. */
export type Doubt = { readonly piece: Piece; readonly found: LeftRunning };

/** What was longer ago is asked on the hours screen only. */
const askedFor: Milliseconds = 2 * day;

type Kept = { readonly minute: number; readonly doubts: readonly Doubt[] };

const keptByBench = new WeakMap<Bench, Kept>();

/**
 * Sessions of the last two days that were perhaps left running, each once, the newest first. Worked out once a minute and
 * a change: it looks through the key presses of the whole bench.
 */
export function doubtsOnBench(bench: Bench, now: Instant): readonly Doubt[] {
  const thisMinute = Math.floor(now / minute);
  const kept = keptByBench.get(bench);
  if (kept?.minute === thisMinute) return kept.doubts;
  const byId = new Map(piecesOnBench(bench).map((piece) => [piece.id, piece]));
  const recent = bench.sessions.filter(({ end }) => now - (end ?? now) < askedFor);
  const doubts = recent.toReversed().flatMap((session): Doubt[] => {
    const target = session.targets.find(({ piece }) => byId.has(piece));
    const piece = byId.get(target?.piece ?? '');
    const found = piece === undefined ? null : leftRunning(bench, piece, session, now);
    return piece === undefined || found === null ? [] : [{ piece, found }];
  });
  keptByBench.set(bench, { minute: thisMinute, doubts });
  return doubts;
}
