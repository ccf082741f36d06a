import type { Piece, PlannedStep } from '../../tracker/bench/index.ts';
import type { Failure } from '../line/command.ts';
import { pieceCalled } from './find-piece.ts';
import { findNamed } from './match.ts';

/** Finds a step of a piece by its place in the list (`steps` shows it), its name, or the beginning of that. */
export function findStep(typed: string, piece: Piece, not: string): PlannedStep | Failure {
  return findNamed(
    typed,
    piece.steps.map((step, index) => ({
      thing: step,
      called: `${index + 1} ${step.name}`,
      names: [String(index + 1), step.name, step.id, `${index + 1} ${step.name}`],
      name: step.name,
    })),
    { not, what: 'step', whose: pieceCalled(piece) },
  );
}
