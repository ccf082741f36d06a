import type { Piece } from '../bench/piece.ts';
import { isDone } from '../bench/progress.ts';
import type { LeadStanding, TradeRules } from '../trade/caution-rules.ts';

/** How a piece stands with lead. A year that nobody knows counts as one before the ban. */
export function leadStanding(piece: Piece, { leadBefore }: TradeRules): LeadStanding {
  if (piece.yearMade !== null && piece.yearMade >= leadBefore) return 'ruled out';
  const tested = piece.steps.some(
    ({ id, stepClass }) => stepClass === 'lead test' && isDone(piece, id, null),
  );
  return tested ? 'tested' : 'not tested';
}
