import { lateCheckOf, type Intent } from '../../tracker/bench/index.ts';
import type { BenchPort } from '../port.ts';
import type { WhyLateState } from '../screens.ts';

/** The screen that asks why, once a "not yet" is noted that came far too late; null for anything else. */
export function askWhyLate(intent: Intent, port: BenchPort): WhyLateState | null {
  if (intent.do !== 'check' || intent.finding !== 'not yet') return null;
  const { bench, sense } = port.snapshot();
  const piece = bench.pieces.get(intent.piece);
  if (piece === undefined || lateCheckOf(bench, piece, sense) === null) return null;
  return { is: 'why late', piece: piece.id };
}
