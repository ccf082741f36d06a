import type { CalendarDay, Milliseconds } from '../time/index.ts';
import type { StampEvent, WindowRule, Milestone } from '../windows/model.ts';
import type { AirNeeds } from './air/air-needs.ts';
import type { Driver } from './counts.ts';
import type { Climate, Chemistry } from './climate.ts';
import type { Condition } from './condition.ts';

/** Step classes: work that is alike on every piece, so that hours can be compared. */
export const stepClasses = [
  'look over',
  'lead test',
  'hardware off',
  'hardware on',
  'clean',
  'strip',
  'reglue',
  'patch veneer',
  'fill',
  'sand bare, first grit',
  'sand bare, next grit',
  'bleach',
  'rinse, neutralise',
  'sand after bleach',
  'stain',
  'pore fill',
  'prime',
  'coat, brushed',
  'coat, wiped',
  'coat, sprayed',
  'scuff',
  'French polish',
  'rub out',
  'wax',
  'touch-up',
  'fit a drawer',
  'refit, wrap',
  'photograph, list',
  'deliver',
  'other',
] as const;
export type StepClass = (typeof stepClasses)[number];

/** One key press that a step expects, in order. The last stroke of the last pass is the step's "done". */
export type PlannedStamp = {
  readonly event: StampEvent;
  readonly agent?: string;
  /** As the foot line names it: `A, first stroke on`. */
  readonly says: string;
  /** Comes again for every section, until the step is done. */
  readonly perSection?: boolean;
};

/** What a step finds out: asked when it is done. The answers in the order in which they are offered. */
export type Question = {
  readonly question: string;
  readonly answers: readonly { readonly id: string; readonly says: string }[];
};

export type Step = {
  /** Unique within the piece. */
  readonly id: string;
  readonly name: string;
  readonly stepClass: StepClass;
  /** Hands-on minutes on the reference piece, without setup: typical, and 1 in 10 below / above. */
  readonly minutes: { readonly typical: number; readonly low: number; readonly high: number };
  readonly driver: Driver;
  /** How many of what `driver` counts `minutes` are for; absent: as many as the reference piece has. */
  readonly minutesFor?: number;
  /** Setup and cleanup, paid once a session. */
  readonly setupMinutes: number;
  /** Key of a product in the piece's own copies. */
  readonly product?: string;
  /** Coats or passes within this one step. */
  readonly passes?: number;
  readonly stamps: readonly PlannedStamp[];
  /** Windows of the step itself, beside those of its product. */
  readonly windows: readonly WindowRule[];
  /** Milestones of earlier steps that must be reached before this one. */
  readonly needs: readonly Milestone[];
  readonly grit?: number;
  /** Makes dust; needs dust-free air; gives off fumes. */
  readonly dusty?: boolean;
  readonly cleanAir?: boolean;
  readonly fumes?: boolean;
  /** Repeated until it looks right: a bleach round, an oil coat. */
  readonly untilRight?: boolean;
  readonly cautions: readonly string[];
  /** For which pieces it is; absent: for all. */
  readonly onlyIf?: Condition;
  readonly asks?: Question;
  /** How many times its minutes an answer makes of them: by the id of the step that asked, then by answer. */
  readonly minutesTimes?: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Ids of the later steps that it is the trial for: a test patch, a sample board. They wait until it was found ready. */
  readonly trialFor?: readonly string[];
};

/** Id of the window in which a trial is judged. */
export const trialWindow = 'trial';

/** One's own can beside a generic class. Days are the shop's. */
export type Can = {
  readonly batch?: string;
  readonly openedOn?: CalendarDay;
  /** The last day for which the maker vouches. */
  readonly keepsTill?: CalendarDay;
  /** How long it keeps once it was opened. */
  readonly onceOpened?: Milliseconds;
};

/** A product as a piece carries it: generic class, how it dries, and the windows it starts. */
export type Product = {
  readonly id: string;
  readonly name: string;
  readonly productClass: string;
  readonly chemistry: Chemistry;
  readonly statedFor: Climate;
  readonly windows: readonly WindowRule[];
  /** The air it needs, where it is not as usual. */
  readonly needsAir?: AirNeeds;
  /** Said in full the first time it is used on a piece. */
  readonly cautions: readonly string[];
  /** These cautions are said every time. */
  readonly deadly?: boolean;
  /** Windows that differ by the piece's wood. */
  readonly byWood?: {
    readonly soft?: readonly WindowRule[];
    readonly hard?: readonly WindowRule[];
  };
  /** Of the user's own can, what its label and lid say. */
  readonly can?: Can;
  /** Rags and pads used with it can heat by themselves. */
  readonly selfHeatingRags?: boolean;
};

/** A finishing schedule as it comes from templates/ or the user's own folder. */
export type FinishingSchedule = {
  readonly id: string;
  readonly name: string;
  readonly summary: string;
  /** Fingerprint of the file's content, so that a piece knows which edition it came from. */
  readonly hash: string;
  readonly steps: readonly Step[];
  readonly products: Readonly<Record<string, Product>>;
};
