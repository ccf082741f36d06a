/**
 * Shops of our own invention in which coats are tried. They differ from the priors in where products lie against their
 * labels and in the spread from coat to coat, and from each other in when coats are tried.
 */
export type InventedShop = {
  /** Where the middle product lies, times its label's figure; products lie about it with a deviation of 0.3. */
  readonly centre: number;
  /** From coat to coat, of the logarithm, for the middle product. */
  readonly spread: number;
  readonly habit: Habit;
  /** Priors were chosen on these; the others were kept for telling how good the choice is. */
  readonly isForChoosing: boolean;
};

export type Habit = {
  readonly name: string;
  readonly label: number;
  /** When a coat is first tried, in minutes, where its window opens after `opening`. */
  readonly first: (opening: number, part: () => number) => number;
  /** When it is tried again after it was not yet there. */
  readonly again: (at: number, part: () => number) => number;
  /** Nothing is tried between eight in the evening and eight in the morning. */
  readonly byDay?: true;
  /** So many coats are never tried, and so many given up after each "not yet". */
  readonly skips: number;
  readonly givesUp: number;
  /** So many findings are wrong, and so many coats slow for a reason of their own that nobody told. */
  readonly wrong: number;
  readonly odd: number;
};

const usual = { skips: 0, givesUp: 0.03, wrong: 0, odd: 0 };
const soonAfter = (mean: number, part: () => number): number => -mean * Math.log(1 - part());
const hoursLater = (at: number, part: () => number): number => at + 60 + 120 * part();
const growing = (at: number, part: () => number): number => at * (1.15 + 0.4 * part());
const aroundLabel = (_opening: number, part: () => number): number => 240 * (0.5 + 0.8 * part());

const habits: readonly Habit[] = [
  {
    ...usual,
    name: 'at the ping, then every few hours',
    label: 240,
    first: (opening, part) => opening + soonAfter(15, part),
    again: hoursLater,
  },
  {
    ...usual,
    name: 'at the ping, not overnight',
    label: 720,
    first: (opening, part) => opening + soonAfter(15, part),
    again: hoursLater,
    byDay: true,
  },
  {
    ...usual,
    name: 'forgetful',
    label: 240,
    first: (opening, part) => opening + soonAfter(240, part),
    again: (at, part) => at + 120 + 120 * part(),
    skips: 0.3,
    givesUp: 0.15,
  },
  {
    ...usual,
    name: 'restless',
    label: 240,
    first: aroundLabel,
    again: growing,
    givesUp: 0.05,
  },
  {
    ...usual,
    name: 'at the ping or well before',
    label: 240,
    first: (opening, part) =>
      part() < 0.5 ? opening + soonAfter(15, part) : 240 * (0.4 + 0.6 * part()),
    again: (at, part) => at + 36 + 60 * part(),
  },
  {
    ...usual,
    name: 'restless, 1 finding in 20 wrong',
    label: 240,
    first: aroundLabel,
    again: growing,
    givesUp: 0.05,
    wrong: 0.05,
    odd: 0.03,
  },
];

/** Every second one is for choosing, so that each habit, centre and spread is on both sides. */
export const inventedShops: readonly InventedShop[] = habits.flatMap((habit, h) =>
  [0.7, 1, 1.5].flatMap((centre, c) =>
    [0.15, 0.3, 0.45].map((spread, s) => ({
      centre,
      spread,
      habit,
      isForChoosing: (h + c + s) % 2 === 0,
    })),
  ),
);
