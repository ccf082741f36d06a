import { minute, second, type Instant, type Milliseconds } from '../../tracker/time/index.ts';

/** A screen that is there has this long to tell what is due before somebody else does. */
export const screenSilentFor: Milliseconds = 30 * second;
/** One that let a ping pass is not waited for again so soon. */
const distrustedFor: Milliseconds = 10 * minute;
/** Between two looks no more than this is counted: the rest was sleep, of the screen too. */
const mostBetweenLooks: Milliseconds = 16 * second;

export type StandingAside = {
  /**
   * Told at every look while a screen is there.
   * @returns whether to stand aside still. Not where something has been due for long and that screen tells nothing: it is
   *   stopped, or its terminal takes no more output.
   */
  readonly isToStand: (isDue: boolean, now: Instant) => boolean;
  /** No screen is there. */
  readonly alone: () => void;
};

export function createStandingAside(): StandingAside {
  let lookedAt: Instant | null = null;
  let silentFor: Milliseconds = 0;
  let distrustedTill: Instant | null = null;
  return {
    isToStand: (isDue, now) => {
      const passed =
        lookedAt === null ? 0 : Math.min(Math.max(0, now - lookedAt), mostBetweenLooks);
      lookedAt = now;
      silentFor = isDue ? silentFor + passed : 0;
      if (silentFor >= screenSilentFor) distrustedTill = now + distrustedFor;
      // After the clock was set back nothing is known of how long ago that was.
      if (distrustedTill !== null && now < distrustedTill - distrustedFor) distrustedTill = null;
      return distrustedTill === null || now >= distrustedTill;
    },
    alone: () => {
      lookedAt = null;
      silentFor = 0;
      distrustedTill = null;
    },
  };
}
