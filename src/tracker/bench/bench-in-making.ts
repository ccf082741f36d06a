import type { OddTimer, Piece, Session, Shutdown } from './piece.ts';

/** The bench while facts are folded in; nobody outside this folder sees it half made. */
export type BenchInMaking = {
  readonly pieces: Map<string, Piece>;
  readonly sessions: Map<string, Session>;
  readonly timers: Map<string, OddTimer>;
  lastShut: Shutdown | null;
  readonly clockSteps: { at: number; byMs: number }[];
};
