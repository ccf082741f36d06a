import type { Caution, TakenUp } from '../../tracker/cautions/index.ts';
import { cautionWords } from '../../views/format/index.ts';
import type { Look } from '../line/look.ts';

/** One caution a line. */
export const cautionLine = (caution: Caution, { now, shop }: Look): string =>
  `caution: ${cautionWords(caution, now, shop)}`;

/**
 * What to be careful about in the steps just taken up: when one is picked up what is said in full, and how much more
 * there is; when one is begun or put in what comes of the moment, and what can kill.
 */
export function takenUpLines(taken: readonly TakenUp[], look: Look): readonly string[] {
  const lines = taken.flatMap(({ pickedUp, goesOn, cautions, piece }) => {
    const told = cautions.full.filter(
      (each) => pickedUp || each.deadly || (each.ofTheMoment && !goesOn),
    );
    const number = look.bench.pieces.get(piece)?.number;
    const rest = cautions.brief.length;
    return [
      ...told.map((each) => cautionLine(each, look)),
      ...(pickedUp && rest > 0
        ? [`${rest} more that were said before: recoat cautions ${number ?? ''}`]
        : []),
    ];
  });
  return [...new Set(lines)];
}
