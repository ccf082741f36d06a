import type { Piece } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { isFailure, type CommandOption, type Failure, type Given } from '../line/command.ts';
import type { Look } from '../line/look.ts';
import { whenGiven, whenOptions } from '../read/when.ts';
import { findOnBench, findPart } from './find-piece.ts';

/** What most of the work is told about: a piece, perhaps one part of it, perhaps at an earlier time. */
export type WorkTarget = {
  readonly piece: Piece;
  /** Id of the part; null is the whole piece. */
  readonly part: string | null;
  readonly at: Instant | undefined;
};

export const targetOptions: readonly CommandOption[] = [
  ['--part <name>', 'the part that is meant, where the piece has parts'],
  ...whenOptions,
];

/** Reads `<piece>` and the options above. `not` begins the refusal: `Not stamped`. */
export function targetGiven(given: Given, look: Look, not: string): WorkTarget | Failure {
  const piece = findOnBench(given.word('piece'), look.bench, not);
  if (isFailure(piece)) return piece;
  const part = findPart(given.maybe('part'), piece, not);
  if (isFailure(part)) return part;
  const when = whenGiven(given, not, look);
  return isFailure(when) ? when : { piece, part: part?.id ?? null, at: when.at };
}
