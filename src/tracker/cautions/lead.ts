import type { Piece } from '../bench/piece.ts';
import { originalOf } from '../bench/left-out.ts';
import { isDone } from '../bench/progress.ts';
import type { LeadStanding, TradeRules } from '../trade/caution-rules.ts';

/** How a piece stands with lead. A year that nobody knows counts as one before the ban. */
export function leadStanding(piece: Piece, { leadBefore }: TradeRules): LeadStanding {
  if (piece.yearMade !== null && piece.yearMade >= leadBefore) return 'ruled out';
  const standings = piece.steps
    .filter(({ id, stepClass }) => stepClass === 'lead test' && isDone(piece, id, null))
    .map((step): LeadStanding => {
      if (step.asks === undefined) return 'tested';
      // A question that nobody answered is no test.
      const answer = piece.answers[originalOf(step)]?.answer ?? null;
      if (answer === null) return 'not tested';
      return answer === noLead ? 'tested' : 'found';
    });
  return worst.find((each) => standings.includes(each)) ?? 'not tested';
}

/** The id of the answer that no lead was found; every other answer of a lead test says that there is some. */
const noLead = 'none';

const worst: readonly LeadStanding[] = ['found', 'tested'];
