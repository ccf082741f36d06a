import type { Finding } from './facts.ts';
import type { Piece } from './piece.ts';
import { rulesOf } from './sorted-piece.ts';

/**
 * What trying a surface showed, as the key says it and as it is taken back: `ready, next coat`; trouble is told of the
 * step that had it, `trouble, coat 2`.
 *
 * @param check `window` is the key of the window that was tried: its third word is its rule
 */
export function checkSays(
  piece: Piece | undefined,
  {
    finding,
    step: id,
    window,
  }: { readonly finding: Finding; readonly step: string; readonly window: string },
): string {
  const step = piece?.steps.find((each) => each.id === id);
  if (piece === undefined || step === undefined) return finding;
  if (finding === 'trouble') return `trouble, ${step.name}`;
  const rule = rulesOf(piece, step).find((each) => each.id === window.split('/')[2]);
  return rule === undefined ? finding : `${finding}, ${rule.verb}`;
}
