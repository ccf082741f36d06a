import { readDuration, type Instant } from '../../tracker/time/index.ts';
import { failure, type CommandOption, type Failure, type Given } from '../line/command.ts';
import type { Look } from '../line/look.ts';
import { readMoment } from './read-moment.ts';

/** For whatever happened before it was told. */
export const whenOptions: readonly CommandOption[] = [
  ['--at <time>', 'when it happened: 14:02, yesterday 16:30, 23 Nov 9:15'],
  ['--ago <length>', 'how long ago: 10min, 1:20, 2 h'],
];

/** When something happened, if it was said. `not` begins the refusal: `Not picked up`. */
export function whenGiven(
  given: Given,
  not: string,
  { now, shop }: Pick<Look, 'now' | 'shop'>,
): { readonly at: Instant | undefined } | Failure {
  const at = given.maybe('at');
  const ago = given.maybe('ago');
  if (at !== null && ago !== null) return failure('usage', `${not}: give --at or --ago, not both.`);
  if (ago !== null) {
    const length = readDuration(ago);
    return length.ok ? { at: now - length.ms } : failure('usage', `${not}: ${length.says}`);
  }
  if (at === null) return { at: undefined };
  const moment = readMoment(at, now, shop.zone);
  return moment.ok ? { at: moment.at } : failure('usage', `${not}: ${moment.says}`);
}
