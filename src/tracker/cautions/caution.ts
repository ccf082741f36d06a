import type { Instant } from '../time/index.ts';

/** Something to be careful about in a step, as it is said on this piece at this moment. */
export type Caution = {
  /** The same for the same thing to be careful about: `lead-not-tested`, `pair: chlorine bleach, vinegar`. */
  readonly id: string;
  /** Words without a clock time. */
  readonly says: string;
  /** Until when; said after the words, and before `then`. */
  readonly until?: Instant;
  readonly then?: string;
  /** Said in full every time. */
  readonly deadly: boolean;
  /** It comes of what was done before or goes on beside it, so it is also said when the step is taken up. */
  readonly ofTheMoment: boolean;
  /** A publication, or "common practice, no source"; null for what the piece's own product or step says. */
  readonly source: string | null;
};
