import type { ImportedHours, OddTimer, Pot, Session, Shutdown } from './bench.ts';
import type { Piece } from './piece.ts';

/** The bench while facts are folded in; nobody outside this folder sees it half made. */
export type BenchInMaking = {
  readonly pieces: Map<string, Piece>;
  readonly sessions: Map<string, Session>;
  /** Of each piece: how many facts touched it or its sessions, and the last of them. */
  readonly touches: Map<string, { count: number; last: string }>;
  readonly timers: Map<string, OddTimer>;
  readonly pots: Map<string, Pot>;
  readonly imports: Map<string, ImportedHours>;
  /** The fact that is being folded in. */
  folding: string;
  lastShut: Shutdown | null;
};

/** Notes that the fact being folded in is about a piece, or about hands on it. */
export function touch(bench: BenchInMaking, piece: string): void {
  const before = bench.touches.get(piece);
  if (before === undefined) {
    bench.touches.set(piece, { count: 1, last: bench.folding });
  } else {
    before.count += 1;
    before.last = bench.folding;
  }
}
