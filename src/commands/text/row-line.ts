import { standingOf } from '../../tracker/bench/index.ts';
import { standingWords } from '../../views/plain/standing-words.ts';
import type { Look } from '../line/look.ts';

/** How a piece stands, in one line; none where it isn't on the bench. */
export function rowLine(look: Look, id: string | null): readonly string[] {
  const { bench, now, sense } = look;
  const piece = id === null ? undefined : bench.pieces.get(id);
  if (piece?.place !== 'bench') return [];
  const { number, name, state, when, then } = standingWords(
    standingOf(bench, piece, now, sense),
    look,
  );
  const words = [`${state} ${when}`.trim(), then].filter((each) => each !== '').join('; ');
  return [`${number} ${name}: ${words}`];
}
