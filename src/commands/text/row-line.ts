import { standingOf } from '../../tracker/bench/index.ts';
import { windowWords } from '../../views/format/index.ts';
import type { Look } from '../line/look.ts';

/** How a piece stands, in one line; none where it isn't on the bench or nothing runs. */
export function rowLine({ bench, now, sense, shop }: Look, id: string | null): readonly string[] {
  const piece = id === null ? undefined : bench.pieces.get(id);
  if (piece?.place !== 'bench') return [];
  const { window } = standingOf(bench, piece, now, sense);
  if (window === null) return [];
  const { words, clock } = windowWords(window, now, shop);
  return [`${piece.number} ${piece.name}: ${words} ${clock}`];
}
