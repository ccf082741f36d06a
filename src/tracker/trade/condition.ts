import { countedBy, type Counted, type Driver } from './counts.ts';

/** The word for what nobody has told: no year, no wood, no answer. */
export const unknown = 'unknown';

/** Things to know of a piece that a step can depend on. Whatever is named must hold. */
export type Terms = {
  /** Made before that year, or in a year that nobody knows. */
  readonly madeBefore?: number;
  /** Made in that year or later, and known to be. */
  readonly madeSince?: number;
  readonly wood?: readonly ('soft' | 'hard' | 'unknown')[];
  /** By the id of the step that asks: the answers that will do; `unknown` is no answer. */
  readonly answers?: Readonly<Record<string, readonly string[]>>;
};

/** For which pieces a step is: all of its terms hold, and of `any`, where it is there, one group. */
export type Condition = Terms & { readonly any?: readonly Terms[] };

/** What is known of a piece. `answers` by the id of the step that asked. */
export type KnownOfPiece = {
  readonly yearMade: number | null;
  readonly wood: 'soft' | 'hard' | null;
  readonly answers: Readonly<Record<string, string>>;
  /** What it has none of. */
  readonly lacks?: readonly Counted[];
};

/** A piece of which nothing was told yet. */
export const nothingKnown: KnownOfPiece = { yearMade: null, wood: null, answers: {} };

/** A term that doesn't hold, with what is known instead. */
export type Failing =
  | { readonly term: 'year'; readonly since: number | null; readonly before: number | null }
  | { readonly term: 'wood'; readonly wanted: NonNullable<Terms['wood']> }
  | { readonly term: 'answer'; readonly step: string; readonly answer: string | null }
  | { readonly term: 'none'; readonly of: Counted };

/** The first term of a condition that keeps a step from a piece; null where all hold. */
export function failingTerm(condition: Condition, known: KnownOfPiece): Failing | null {
  const { any, ...terms } = condition;
  const failing = failingOf(terms, known);
  if (failing !== null || any === undefined) return failing;
  const inAll = any.map((each) => failingOf(each, known));
  return inAll.includes(null) ? null : (inAll.at(-1) ?? null);
}

/** Whether a condition is met by what is known of a piece; no condition always is. */
export const holds = (condition: Condition | undefined, known: KnownOfPiece): boolean =>
  condition === undefined || failingTerm(condition, known) === null;

/** Why a step isn't for a piece: its condition, or the piece has none of what it works on; null where it is. */
export function whyNotFor(
  step: { readonly driver: Driver; readonly onlyIf?: Condition },
  known: KnownOfPiece,
): Failing | null {
  const what = countedBy(step);
  if (what !== null && known.lacks?.includes(what) === true) return { term: 'none', of: what };
  return step.onlyIf === undefined ? null : failingTerm(step.onlyIf, known);
}

function failingOf(
  { madeBefore, madeSince, wood, answers = {} }: Terms,
  { yearMade, wood: known, answers: given }: KnownOfPiece,
): Failing | null {
  if (madeBefore !== undefined && yearMade !== null && yearMade >= madeBefore)
    return { term: 'year', since: null, before: madeBefore };
  if (madeSince !== undefined && (yearMade === null || yearMade < madeSince))
    return { term: 'year', since: madeSince, before: null };
  if (wood !== undefined && !wood.includes(known ?? unknown)) return { term: 'wood', wanted: wood };
  for (const [step, wanted] of Object.entries(answers)) {
    const answer = given[step] ?? null;
    if (!wanted.includes(answer ?? unknown)) return { term: 'answer', step, answer };
  }
  return null;
}

/** Every group of terms of a condition: its own, and those of `any`. */
export const termsOf = ({ any = [], ...terms }: Condition): readonly Terms[] => [terms, ...any];
