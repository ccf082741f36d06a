import { isDone, lanesOf, type Piece } from '../../tracker/bench/index.ts';

/**
 * The part to go on with once a step is done for one: the next that it is not done for, from there on and round again,
 * so that drawers are coated one after another with one key. The same part while its step is under way, and after the
 * last of them.
 */
export function partAfter(piece: Piece, step: string, part: string | null): string | null {
  if (part === null || !isDone(piece, step, part)) return part;
  const parts = lanesOf(piece);
  const at = parts.indexOf(part);
  const onward = [...parts.slice(at + 1), ...parts.slice(0, at)];
  return onward.find((each) => each !== null && !isDone(piece, step, each)) ?? part;
}
