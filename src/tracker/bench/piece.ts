import type { CalendarDay, Instant } from '../time/index.ts';
import type { Climate } from '../trade/climate.ts';
import type { Counts } from '../trade/counts.ts';
import type { LateCause } from '../trade/late-causes.ts';
import type { Profile } from '../trade/profile.ts';
import type { Product, Step } from '../trade/schedule.ts';
import type { StampEvent } from '../windows/model.ts';
import type { CoatWeight, Expectation, Finding, MoistureSpot, Part, Wood } from './facts.ts';

export type Air = Climate & { readonly readAt: Instant };

/** A stamp as it stands after corrections. */
export type Stamp = {
  readonly fact: string;
  readonly part: string | null;
  readonly step: string;
  readonly event: StampEvent;
  readonly agent: string | null;
  readonly pass: number;
  readonly section: number | null;
  /** The shared pot that it was mixed in, taken from or washed out with. */
  readonly pot?: string;
  readonly at: Instant;
  readonly air: Air | null;
};

/** The finish of a step, for one part or (part null) for the whole piece. */
export type Finish = {
  readonly fact: string;
  readonly part: string | null;
  readonly step: string;
  readonly pass: number;
  readonly at: Instant;
  readonly expectation: Expectation;
  readonly air: Air | null;
};

export type Check = {
  readonly fact: string;
  readonly part: string | null;
  readonly step: string;
  readonly window: string;
  readonly finding: Finding;
  readonly shown: string | null;
  readonly at: Instant;
  readonly air: Air | null;
};

export type CoatWeighed = {
  readonly fact: string;
  readonly part: string | null;
  readonly step: string;
  readonly pass: number;
  readonly weight: CoatWeight;
  readonly at: Instant;
};

export type Lateness = {
  readonly fact: string;
  /** The fact of the check that came late. */
  readonly check: string;
  readonly cause: LateCause;
  readonly at: Instant;
};

export type MoistureReading = {
  readonly fact: string;
  readonly part: string | null;
  readonly step: string | null;
  readonly spot: MoistureSpot;
  readonly percent: number;
  readonly at: Instant;
  readonly air: Air | null;
};

export type Note = {
  readonly fact: string;
  readonly step: string | null;
  readonly text: string;
  readonly at: Instant;
};

export type Hold = {
  /** The fact that put it on hold. */
  readonly fact: string;
  readonly reason: string;
  readonly since: Instant;
  readonly askAgain: CalendarDay | null;
};

export type PlannedStep = Step & {
  /** Not to be done: left out by hand, or by its own rule. */
  readonly skipped: boolean;
  readonly copyOf: string | null;
  /** Skipped (true) or put in (false) by hand against its rule. */
  readonly told?: boolean;
  /** Left out because the piece is none that it is for. */
  readonly leftOut?: true;
};

/** What a step with a question showed. */
export type GivenAnswer = { readonly answer: string; readonly at: Instant; readonly fact: string };

/** A step that is begun without its trial. */
export type Waiver = { readonly step: string; readonly reason: string; readonly at: Instant };

export type Piece = Counts & {
  readonly id: string;
  /** Its number on the bench; null once it has left. */
  readonly number: number | null;
  readonly name: string;
  readonly kind: string | null;
  readonly wood: Wood | null;
  readonly areaM2: number | null;
  readonly profile: Profile | null;
  readonly yearMade: number | null;
  readonly promised: CalendarDay | null;
  readonly schedule: { readonly id: string; readonly name: string; readonly hash: string };
  readonly products: Readonly<Record<string, Product>>;
  readonly parts: readonly Part[];
  /** Pieces that should come out like this one, with the name they had when it was told. */
  readonly partners: readonly { readonly piece: string; readonly name: string }[];
  readonly steps: readonly PlannedStep[];
  readonly stamps: readonly Stamp[];
  readonly finishes: readonly Finish[];
  readonly checks: readonly Check[];
  readonly coatWeights: readonly CoatWeighed[];
  readonly lateness: readonly Lateness[];
  readonly moisture: readonly MoistureReading[];
  readonly notes: readonly Note[];
  /** By the id of the step that asked, for a repeated step that of its original. */
  readonly answers: Readonly<Record<string, GivenAnswer>>;
  readonly waivers: readonly Waiver[];
  readonly hold: Hold | null;
  /** When it last came in from the cold; absent where it never did. */
  readonly carriedInAt?: Instant;
  /** Its minutes and checks are told, but teach nothing. */
  readonly keptFromLearning?: true;
  /** When a key last moved something on it, which may be long after what it moved it to; absent where none did. */
  readonly movedAt?: Instant;
  readonly place: 'bench' | 'past' | 'removed';
  readonly addedAt: Instant;
  readonly leftAt: Instant | null;
};

/** What scales a step's minutes on a piece. */
export type Sized = Pick<Piece, 'areaM2'> &
  Partial<Counts> & {
    readonly profile?: Profile | null;
    readonly answers?: Readonly<Record<string, Pick<GivenAnswer, 'answer'>>>;
  };
