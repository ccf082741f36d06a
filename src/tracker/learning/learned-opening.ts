import type { Milliseconds } from '../time/index.ts';
import { minute } from '../time/index.ts';
import type { Span } from '../windows/model.ts';
import { foreseenDrying, type LearnedDrying } from './drying-times.ts';

/** So many coats must have been found ready before a window opens by them. */
export const enoughCoats = 5;

/** A learned opening is one by which so many coats are there: 4 times in 5. */
export const openingChance = 0.8;

/** When a coat can be tried, after its last stroke. `coats` null: by the label and the conditions alone. */
export type Opening = { readonly ms: Milliseconds; readonly coats: number | null };

/**
 * Where a window opens, after coats that were tried. `labelled` is the label's figure under the present conditions. Only
 * spans that are marked learnable are moved (scuffing and recoating of waterborne, evaporative and oxidative coats): what
 * the label says of two-part and acid-cured coats, forbidden gaps, wrapping and cure stands.
 */
export function learnedOpening(
  span: Span,
  labelled: Milliseconds,
  learned: LearnedDrying,
): Opening {
  if (span.learnable !== true || learned.found < enoughCoats) return { ms: labelled, coats: null };
  const minutes = foreseenDrying(learned, labelled / minute, openingChance);
  return { ms: Math.round(minutes) * minute, coats: learned.coats };
}
