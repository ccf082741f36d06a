import { findingsAbout, type Finding } from '../../persist/checkup/index.ts';
import { isKeeperPresent, isScreenPresent, readKeeperMark } from '../../persist/presence/index.ts';
import type { Settings } from '../../tracker/settings/index.ts';
import type { Instant } from '../../tracker/time/index.ts';

const { fine, note, wrong } = findingsAbout('keeper');

/**
 * Who watches, and whether anybody should.
 *
 * @param next when the next ping is to come; null while none is
 * @param tell an instant in words
 */
export function checkKeeper(
  folder: string,
  { keeper }: Settings,
  next: Instant | null,
  tell: (at: Instant) => string,
): Finding {
  const mark = readKeeperMark(folder);
  const isThere = isKeeperPresent(folder);
  const isScreen = isScreenPresent(folder);
  if (isThere)
    return fine(
      mark === null
        ? 'A keeper watches.'
        : `A keeper watches: process ${mark.pid}, since ${tell(mark.began)}.`,
    );
  const what = next === null ? 'nothing is to come' : `the next ping is to come ${tell(next)}`;
  if (mark !== null)
    return wrong(
      `The keeper (process ${mark.pid}) was ended from outside; ${what}.`,
      'Start one again: recoat keep. Or open the screen.',
    );
  if (isScreen) return fine(`A screen is open and pings; ${what}.`);
  if (next === null) return fine('No keeper, and none is needed: nothing is to come.');
  return keeper === 'yes'
    ? wrong(
        `A keeper is wanted and none is there; ${what}.`,
        'Start one: recoat keep. Or open the screen, which starts it.',
      )
    : note(
        `No screen is open and no keeper is there; ${what}, and it will reach nobody.`,
        'Open the screen, or have a keeper: recoat settings keeper yes',
      );
}
