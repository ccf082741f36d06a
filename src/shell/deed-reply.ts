import { ofTheMoment, takenUp } from '../tracker/cautions/index.ts';
import { cautionWords } from '../views/format/index.ts';
import type { ActReply, Shop } from '../views/port.ts';
import type { Applied } from './apply-intent.ts';

type Deed = Extract<Applied, { ok: true }>;
/** The bench as it is after the deed, and what its cautions are worked out from. */
type Around = Parameters<typeof takenUp>[1];

/** What the screen says of a deed: what was done, and what to be careful about from now on. */
export function deedReply(
  { facts, says, piece, warns }: Deed,
  around: Around,
  shop: Shop,
): ActReply {
  const heed = ofTheMoment(takenUp(facts, around));
  const words = (isDeadly: boolean): readonly string[] =>
    heed
      .filter((each) => each.deadly === isDeadly)
      .map((each) => cautionWords(each, around.now, shop));
  // What can kill is loud and comes first; the rest follows what was done.
  const loud = [...words(true), ...(warns === undefined ? [] : [warns])].map(withoutStop);
  return {
    ok: true,
    says: [says, ...words(false)].join('.  '),
    piece,
    ...(loud.length === 0 ? {} : { warns: loud.join('. ') }),
  };
}

/** The one who shows it ends the sentence. */
const withoutStop = (words: string): string => words.replace(/\.$/, '');
