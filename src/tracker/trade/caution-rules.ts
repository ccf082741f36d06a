import { emptyOverTable, type OverTable } from './over.ts';
import type { StepClass } from './schedule.ts';

/** Something that a product or step puts on, as far as it reacts with another. */
export type Chemical = {
  /** Its name is its id: `chlorine bleach`. */
  readonly name: string;
  /** Product classes that have it. */
  readonly products: readonly string[];
  /** Words by which the name of a step tells it. */
  readonly words: readonly string[];
  /** Chemicals that take it out of the wood again. */
  readonly endedBy: readonly string[];
  /** Nothing is left of it once it has dried. */
  readonly goneWhenDry: boolean;
};

/** Two chemicals that must never meet. */
export type DangerousPair = {
  readonly of: readonly [string, string];
  readonly makes: string;
  readonly instead: string;
  readonly source: string;
};

/** What takes out what is left in the wood, and what does not. */
export type Neutraliser = {
  readonly left: string;
  readonly right: string;
  readonly wrong: readonly string[];
  readonly because: string;
  /** Grams of the right partner to one gram of what is left. */
  readonly takes?: { readonly of: string; readonly grams: number };
  readonly source: string;
};

export const leadStandings = ['not tested', 'tested', 'found', 'ruled out'] as const;
export type LeadStanding = (typeof leadStandings)[number];

/** A caution bound to what a step is: any of its classes, products, words or its fumes; and to lead where it says so. */
export type CautionRule = {
  readonly id: string;
  readonly steps: readonly StepClass[];
  readonly products: readonly string[];
  readonly words: readonly string[];
  readonly fumes: boolean;
  readonly lead: LeadStanding | null;
  /** Words by which the step or its product says the same already. */
  readonly unlessSaid: readonly string[];
  readonly says: string;
  /** Said in full every time. */
  readonly deadly: boolean;
  readonly source: string;
};

/** All that the program knows of what goes together and what to be careful about. */
export type TradeRules = {
  readonly over: OverTable;
  readonly leadBefore: number;
  readonly chemicals: readonly Chemical[];
  readonly pairs: readonly DangerousPair[];
  readonly neutralisers: readonly Neutraliser[];
  readonly cautions: readonly CautionRule[];
};

/** For what is worked out without them. */
export const noRules: TradeRules = {
  over: emptyOverTable,
  leadBefore: 0,
  chemicals: [],
  pairs: [],
  neutralisers: [],
  cautions: [],
};

/** Whether a name has one of the words in it, whole. */
export const speaksOf = (name: string, words: readonly string[]): boolean =>
  words.some((word) => wordPattern(word).test(name));

const patterns = new Map<string, RegExp>();

function wordPattern(word: string): RegExp {
  const known = patterns.get(word);
  if (known !== undefined) return known;
  const literal = word.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);
  const made = new RegExp(String.raw`(?<![\p{L}\p{N}])${literal}s?(?![\p{L}\p{N}])`, 'iu');
  patterns.set(word, made);
  return made;
}
