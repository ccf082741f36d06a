import { firstSentence } from '../format/first-sentence.ts';
import type { Snapshot } from '../port.ts';

/** What may end the pings while something spoils: a machine that may sleep, or one that is closed; null where nothing is known. */
export function sleepWords(
  awake: Snapshot['awake'],
  how: 'a sentence' | 'a few words',
): string | null {
  if (awake?.kept === false)
    return how === 'a sentence' ? firstSentence(awake.says) : 'may sleep: no ping';
  if (awake?.closing === undefined) return null;
  return how === 'a sentence' ? awake.closing : 'no pings if this closes';
}
