import type { FinishingSchedule, Product } from '../../tracker/trade/index.ts';
import type { Problem } from './problem.ts';

/** Where a window's figures come from, in words: its opening and its closing. */
export type Provenance = { readonly opens: string; readonly closes: string };

/** Provenance of each window of each product: by product id, then window id. */
export type Sources = Readonly<Record<string, Readonly<Record<string, Provenance>>>>;

/** A thing of the program's that a file of the user's replaces. */
export type Replacement = {
  readonly kind: 'finishing schedule' | 'product';
  readonly id: string;
  readonly file: string;
  /** One sentence for people. */
  readonly says: string;
};

/** The program's own templates, read: plain data that the build writes as JSON beside the program. */
export type ShippedTemplates = {
  /** In the order of their names. */
  readonly schedules: readonly FinishingSchedule[];
  /** Products that any schedule may name, and that a step improvised at the bench may use. */
  readonly products: Readonly<Record<string, Product>>;
  readonly sources: Sources;
};

/** Everything that could be read, and everything that was wrong with the rest. */
export type ScheduleLibrary = ShippedTemplates & {
  readonly problems: readonly Problem[];
  readonly replacements: readonly Replacement[];
  /** What is worth a look in files that count all the same. */
  readonly remarks: readonly Problem[];
};
