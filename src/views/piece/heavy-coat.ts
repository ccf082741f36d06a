import { coatWeightOf, type Piece } from '../../tracker/bench/index.ts';
import type { Window } from '../../tracker/windows/index.ts';

/** What no figure of a window takes in: that its coat was told to be heavy. Null where it wasn't, or nothing dries. */
export function heavyCoatWords(piece: Piece, { rule, subject }: Window): string | null {
  const dries = rule.kind === 'coat' || rule.kind === 'cure';
  const weight = coatWeightOf(piece, subject.stepId, subject.partId, subject.pass);
  return dries && weight === 'heavy'
    ? 'a heavy coat: it dries slower than these figures say'
    : null;
}
