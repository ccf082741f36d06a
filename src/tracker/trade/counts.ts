/** What is counted on a piece: pulls, hinges and locks; joints to be glued; drawers. */
export const counted = ['fittings', 'joints', 'drawers'] as const;
export type Counted = (typeof counted)[number];

/** What a step's typical minutes grow with. */
export const drivers = ['area', 'fixed', ...counted] as const;
export type Driver = (typeof drivers)[number];

/** How many of each a piece has; null where nobody told. */
export type Counts = Readonly<Record<Counted, number | null>>;

export const nothingCounted: Counts = { fittings: null, joints: null, drawers: null };

/** More than that is a slip of the finger. */
export const mostCounted = 500;

/** How many of them typical minutes are stated for, where a step doesn't say: a chest with eight pulls and four drawers, and one joint (common practice, no source). */
const onReferencePiece: Readonly<Record<Counted, number>> = { fittings: 8, joints: 1, drawers: 4 };

const isCounted = (driver: Driver): driver is Counted =>
  (counted as readonly Driver[]).includes(driver);

/** What the step's work is counted in; null where it isn't. */
export const countedBy = ({ driver }: { readonly driver: Driver }): Counted | null =>
  isCounted(driver) ? driver : null;

/**
 * How many times its typical minutes a step takes on a piece with that many; each one takes as long as the other. 1 where
 * it isn't told, and where a step was worked on all the same though the piece is said to have none.
 */
export function countFactor(
  step: { readonly driver: Driver; readonly minutesFor?: number },
  piece: Partial<Counts>,
): number {
  const what = countedBy(step);
  const count = what === null ? null : (piece[what] ?? null);
  if (what === null || count === null || count === 0) return 1;
  return count / (step.minutesFor ?? onReferencePiece[what]);
}

/** What a piece is known to have none of. */
export const lacking = (piece: Counts): readonly Counted[] =>
  counted.filter((what) => piece[what] === 0);

/** `8 fittings`, `1 drawer`, `no joints`. */
export const countWords = (what: Counted, count: number): string =>
  `${count === 0 ? 'no' : count} ${count === 1 ? what.slice(0, -1) : what}`;

/** Every count that was told, in words. */
export const countsWords = (piece: Counts): readonly string[] =>
  counted.flatMap((what) => {
    const count = piece[what];
    return count === null ? [] : [countWords(what, count)];
  });

/** Reads what `countWords` writes, and `0 joints`; null for anything else. */
export function readCount(typed: string): Partial<Counts> | null {
  const [, figure = '', word = ''] = /^(no|\d{1,6})\s+([a-z]+)$/.exec(typed.toLowerCase()) ?? [];
  const what = counted.find((each) => word === each || `${word}s` === each);
  return what === undefined ? null : { [what]: figure === 'no' ? 0 : Number(figure) };
}
