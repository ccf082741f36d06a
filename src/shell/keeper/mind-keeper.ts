import {
  isKeeperPresent,
  presentAsScreen,
  readKeeperMark,
  takeKeeperMark,
} from '../../persist/presence/index.ts';
import { second, type Instant } from '../../tracker/time/index.ts';
import { clock as clockWords, day } from '../../views/format/index.ts';
import type { Session } from '../session.ts';
import type { World } from '../world.ts';
import { startKeeper } from './start-keeper.ts';

/** A screen's dealings with the keeper. */
export type KeeperMinding = {
  /** After every look: while pings are to come, and the user wants one, a keeper stands by, whatever ends this screen. */
  readonly looked: (next: Instant | null) => void;
  /** The screen is about to stand still for a while: a keeper is not to wait for it. */
  readonly standsStill: () => void;
  readonly goesOn: () => void;
  /** The screen has closed, and its store with it. */
  readonly leave: () => void;
};

/** Looking whether one is there costs little, but not nothing. */
const looksAgainAfter = 5 * second;
/** One that was started needs a moment until it is there. */
const startsAgainAfter = 60 * second;

/** Says to keepers that a screen is here, so that they stand aside, and tells how the last one fared. */
export function mindKeeper(world: World, session: Session, folder: string): KeeperMinding {
  const { clock } = world;
  let presence = presentAsScreen(folder);
  let lookedAt = Number.NEGATIVE_INFINITY;
  let startedAt = Number.NEGATIVE_INFINITY;
  let isSomethingToCome = false;

  /** A keeper has no bell: without a desktop that shows notifications, and without a hook, nobody would hear it. */
  const wouldBeHeard = (): boolean => {
    const { settings } = session.snapshot();
    return settings.hook !== 'none' || (settings.desktop && session.pingWays().desktop !== false);
  };
  const isThere = (): boolean => {
    const isPresent = isKeeperPresent(folder);
    session.setKeeper(isPresent ? 'there' : wouldBeHeard() ? 'none' : 'cannot');
    return isPresent;
  };
  const isWanted = (): boolean => session.snapshot().settings.keeper === 'yes' && wouldBeHeard();
  const startOne = (): void => {
    startedAt = clock.now();
    if (!startKeeper(world, folder))
      session.say('No keeper: it could not be started. Nothing pings once this is closed.');
  };

  const mark = readKeeperMark(folder);
  if (isThere()) session.say('The keeper pinged till now. This screen has taken over.');
  else if (mark !== null) {
    takeKeeperMark(folder);
    const { shop } = session.snapshot();
    const since = `${day(mark.began, shop)} ${clockWords(mark.began, shop)}`;
    session.say(
      `The keeper that began ${since} was ended from outside. i: what it pinged, and what it missed.`,
    );
  }

  return {
    looked: (next) => {
      isSomethingToCome = next !== null;
      // The folder may not have taken its file when this began.
      presence ??= presentAsScreen(folder);
      const now = clock.now();
      if (Math.abs(now - lookedAt) < looksAgainAfter) return;
      lookedAt = now;
      if (isThere() || next === null || !isWanted()) return;
      if (Math.abs(now - startedAt) >= startsAgainAfter) startOne();
    },
    standsStill: () => presence?.leave(),
    goesOn: () => {
      presence = presentAsScreen(folder);
    },
    leave: () => {
      const wantsKeeper = isWanted() && isSomethingToCome && !isKeeperPresent(folder);
      presence?.leave();
      if (wantsKeeper) startOne();
    },
  };
}
