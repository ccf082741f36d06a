import type { CoatWeight } from './facts.ts';
import { isBegun } from './matches/alike-steps.ts';
import { isCoat, passesMade } from './matches/coats-of.ts';
import type { CoatWeighed, Piece, PlannedStep } from './piece.ts';

/** How heavy a coat went on, as it was last told; null where nothing was. What is told of the whole counts for each part. */
export function coatWeightOf(
  piece: Piece,
  step: string,
  part: string | null,
  pass: number,
): CoatWeight | null {
  const told = piece.coatWeights.findLast(
    (each) =>
      each.step === step && each.pass === pass && (each.part === null || each.part === part),
  );
  return told?.weight ?? null;
}

/** What stands of all that was told of a step's coats: the last word on each pass and part. */
export function coatWeightsOn(piece: Piece, step: string): readonly CoatWeighed[] {
  const last = new Map<string, CoatWeighed>();
  for (const each of piece.coatWeights)
    if (each.step === step) last.set(`${each.pass}/${each.part ?? ''}`, each);
  return [...last.values()];
}

/** The coat of which a weight can be told: that step if it is one and begun, else the last coat that is begun. */
export function coatToWeigh(piece: Piece, stepId: string | null): PlannedStep | null {
  const coats = piece.steps.filter((step) => isCoat(step) && isBegun(piece, step));
  return coats.find(({ id }) => id === stepId) ?? coats.at(-1) ?? null;
}

/** The pass that a weight is about: the last one begun. */
export const passToWeigh = (piece: Piece, step: PlannedStep): number =>
  Math.max(1, passesMade(piece, step));
