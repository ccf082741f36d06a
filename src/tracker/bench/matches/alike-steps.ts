import type { Piece, PlannedStep } from '../piece.ts';

/** A step of one piece, and the one of the other that is the same work; null where the other has none. */
export type AlikeSteps = { readonly here: PlannedStep | null; readonly there: PlannedStep | null };

/** Steps of one finishing schedule have the same ids on every piece; those put in later are told by name and class. */
export function alikeSteps(here: Piece, there: Piece): readonly AlikeSteps[] {
  const left = new Set(there.steps);
  const taken = new Map<PlannedStep, PlannedStep>();
  const take = (isAlike: (a: PlannedStep, b: PlannedStep) => boolean): void => {
    for (const step of here.steps) {
      if (taken.has(step)) continue;
      const found = [...left].find((each) => isAlike(step, each));
      if (found === undefined) continue;
      taken.set(step, found);
      left.delete(found);
    }
  };
  take((a, b) => a.id === b.id && a.stepClass === b.stepClass);
  take((a, b) => a.stepClass === b.stepClass && plain(a.name) === plain(b.name));
  return [
    ...here.steps.map((step) => ({ here: step, there: taken.get(step) ?? null })),
    ...[...left].map((step) => ({ here: null, there: step })),
  ];
}

const plain = (name: string): string => name.trim().toLowerCase();

/** Whether anything was done on a step, or put on in it. */
export const isBegun = (piece: Piece, step: PlannedStep): boolean =>
  piece.stamps.some((stamp) => stamp.step === step.id) ||
  piece.finishes.some((finish) => finish.step === step.id);
