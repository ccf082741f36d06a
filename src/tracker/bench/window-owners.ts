import type { Piece, PlannedStep } from './piece.ts';

/** Whose windows a step has: the whole piece's (`part` null) or one part's. `keyPart` is its place in the window's key. */
export type WindowOwner = { readonly part: string | null; readonly keyPart: string };

/**
 * The whole piece where a step was worked as one, and each part where parts were worked on their own. What was done to
 * the whole piece has a window for each part as soon as the parts go on separately, in this step or in a later one.
 */
export function windowOwners(piece: Piece, step: PlannedStep): readonly WindowOwner[] {
  if (piece.parts.length === 0) return [{ part: null, keyPart: '' }];
  const recorded = partsOn(piece, new Set([step.id]));
  if (!recorded.has(null)) return [...recorded].map((part) => ({ part, keyPart: part ?? '' }));
  if (recorded.size > 1) {
    const parts = new Set(piece.parts.map((part) => part.id));
    for (const part of recorded) if (part !== null) parts.add(part);
    return [...parts].map((part) => ({ part, keyPart: part }));
  }
  const later = piece.steps.slice(piece.steps.indexOf(step) + 1).map((each) => each.id);
  const goOnAsOne = [...partsOn(piece, new Set(later))].every((part) => part === null);
  if (goOnAsOne) return [{ part: null, keyPart: '' }];
  // Same key as before they went separate ways: what was pinged once is not pinged again for each part.
  return piece.parts.map((part) => ({ part: part.id, keyPart: '' }));
}

const partsOn = (piece: Piece, steps: ReadonlySet<string>): ReadonlySet<string | null> =>
  new Set(
    [...piece.stamps, ...piece.finishes]
      .filter((record) => steps.has(record.step))
      .map((record) => record.part),
  );
