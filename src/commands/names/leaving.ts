import { inHand } from '../../tracker/bench/index.ts';
import {
  failure,
  isFailure,
  type CommandOption,
  type Failure,
  type Given,
} from '../line/command.ts';
import type { Look } from '../line/look.ts';
import { findOnBench } from './find-piece.ts';

/** For whatever takes a piece in hand. */
export const putDownOption: CommandOption = [
  '--put-down <piece>',
  'with two pairs of hands: the one to put down for it',
];

/** The session to end for it, where a piece was named. `not` begins the refusal: `Not picked up`. */
export function leavingGiven(
  given: Given,
  { bench }: Look,
  not: string,
): { readonly putDown?: string } | Failure {
  const typed = given.maybe('put-down');
  if (typed === null) return {};
  const piece = findOnBench(typed, bench, not);
  if (isFailure(piece)) return piece;
  const held = inHand(bench).find(({ targets }) =>
    targets.some((target) => target.piece === piece.id),
  );
  return held === undefined
    ? failure('refused', `${not}: ${piece.name} is not in hand.`)
    : { putDown: held.id };
}
