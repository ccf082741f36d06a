import type { Milliseconds } from '../time/index.ts';

/** Whether one product class may go over another. */
export const verdicts = ['yes', 'after', 'no'] as const;
export type Verdict = (typeof verdicts)[number];

/**
 * What must come first, where it may go on only after something: it has dried; it was dulled since it was put on; a step
 * of another kind lies between; something that only the eye or a test tells.
 */
export const firsts = ['dry', 'scuffed', 'a step between', 'judgement'] as const;
export type First = (typeof firsts)[number];

/** One row of the table. `below` and `above` name product classes; `above` may be `the same` as what is below. */
export type OverRow = {
  readonly below: readonly string[];
  readonly above: readonly string[];
  /** As the row was written, with the names of groups: `oil stains`, `lacquers, acid-cured`. */
  readonly called: { readonly below: string; readonly above: string };
  readonly verdict: Verdict;
  /** With `after` only. */
  readonly first?: First;
  /** The least time since what is below was put on. */
  readonly wait?: Milliseconds;
  readonly why: string;
  readonly instead?: string;
  /** A publication, or "common practice, no source". */
  readonly source: string;
};

export type OverTable = {
  /** The first that fits a pair counts. */
  readonly rows: readonly OverRow[];
  /** Product classes by the names of their groups. */
  readonly groups: Readonly<Record<string, readonly string[]>>;
  /** Product classes by the step class that puts them on where no product is named. */
  readonly usual: Readonly<Record<string, string>>;
};

export const emptyOverTable: OverTable = { rows: [], groups: {}, usual: {} };

/** What lies there before anybody has worked on it, and once it is bare. */
export const oldFinish = 'old finish';
export const bareWood = 'bare wood';
export const theSame = 'the same';

/** What the table says of a pair; `row` null where no row fits, so that nothing is known of it. */
export type OverAnswer = {
  readonly below: string;
  readonly above: string;
  readonly row: OverRow | null;
};

/** Looks a pair of product classes up. Classes are told apart by their letters, whatever their case. */
export function over(table: OverTable, below: string, above: string): OverAnswer {
  const [under, upper] = [below.trim().toLowerCase(), above.trim().toLowerCase()];
  const row = table.rows.find(
    (each) =>
      has(each.below, under) &&
      (has(each.above, upper) || (each.above.includes(theSame) && under === upper)),
  );
  return { below, above, row: row ?? null };
}

const has = (classes: readonly string[], one: string): boolean =>
  classes.some((each) => each.toLowerCase() === one);

/** Whether a class belongs to one of the table's groups. */
export const isInGroup = (table: OverTable, group: string, productClass: string): boolean =>
  has(table.groups[group] ?? [], productClass.trim().toLowerCase());

/** Every class that the table knows, once, in its own order. */
export const classesOf = (table: OverTable): readonly string[] => [
  ...new Set(Object.values(table.groups).flat()),
];

/** What to do where no row fits. */
export const notInTable = 'not in the table: try it on a sample board';
