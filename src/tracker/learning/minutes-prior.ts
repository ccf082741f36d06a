/**
 * What is believed of anybody's minutes before there are any, and how fast they are followed. The figures come from trying
 * on four open collections of estimated and actual minutes (see DEVELOPERS.md); none is fitted to one of them.
 */
export type MinutesPrior = {
  /** The expected minutes at which the regression has its origin, as their logarithm. */
  readonly origin: number;
  /** Log minutes grow by so much for one of log expected minutes: long steps are overestimated a little less. */
  readonly slope: number;
  /** How many steps the beliefs about the level, the slope and a class are worth. */
  readonly levelWorth: number;
  readonly slopeWorth: number;
  readonly classWorth: number;
  /** Spread of log minutes around what is expected, and how many steps that belief is worth. */
  readonly spread: number;
  readonly spreadWorth: number;
  /** How many steps of a class this person's spread over all classes is worth. */
  readonly classSpreadWorth: number;
  /** The part of a step's own squared spread that it shares with the others on its piece: an awkward piece is awkward all over. */
  readonly sharedOnPiece: number;
  /** What a step teaches is worth so much after the next one; a class forgets as fast, the person a quarter of that. */
  readonly kept: number;
  /** Degrees of freedom of the weights that keep odd ones out. */
  readonly oddity: number;
  /**
   * Minutes that are just what was expected, to the second: written down rather than timed. They are told apart, or they
   * would make all ranges too narrow. Null takes them like any others.
   */
  readonly exact: {
    /** A beta prior: so many exact ones, of so many steps. */
    readonly hits: number;
    readonly of: number;
    /** How much an exact one teaches of the level; it teaches nothing of the spread. */
    readonly worth: number;
  } | null;
};

export const usualPrior: MinutesPrior = {
  origin: 4,
  slope: 0.95,
  levelWorth: 3,
  slopeWorth: 10,
  classWorth: 3,
  spread: 0.5,
  spreadWorth: 4,
  classSpreadWorth: 10,
  sharedOnPiece: 0.15,
  kept: 0.99,
  oddity: 5,
  exact: { hits: 0.2, of: 4.2, worth: 0.3 },
};
