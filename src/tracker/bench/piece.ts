import type { ClockStep } from './clock-frames.ts';
import type { CalendarDay, Instant, Milliseconds } from '../time/index.ts';
import type { Climate, Reading } from '../trade/climate.ts';
import type { Counts } from '../trade/counts.ts';
import type { LateCause } from '../trade/late-causes.ts';
import type { Profile } from '../trade/profile.ts';
import type { Product, Step } from '../trade/schedule.ts';
import type { OwnTime, StampEvent, WindowRule } from '../windows/model.ts';
import type {
  BenchFact,
  CoatWeight,
  Expectation,
  Finding,
  ImportedRow,
  MoistureSpot,
  OvernightAnswer,
  OvernightQuestion,
  Part,
  Target,
  Wood,
} from './facts.ts';

/** The state of the bench, worked out from its facts. Nothing in it depends on the present moment. */
export type Bench = {
  readonly pieces: ReadonlyMap<string, Piece>;
  /** In the order of picking up. */
  readonly sessions: readonly Session[];
  readonly timers: readonly OddTimer[];
  /** In the order of mixing. */
  readonly pots: readonly Pot[];
  readonly trail: Trail;
  /** Of each piece: how many facts touched it or its sessions, and the last of them. Alike, so is the piece. */
  readonly touches: ReadonlyMap<string, { readonly count: number; readonly last: string }>;
  /** The facts of every group made by hand, also of those taken back. */
  readonly groups: ReadonlyMap<string, readonly BenchFact[]>;
  readonly lastShut: Shutdown | null;
  /** When the machine's clock was set, and by how much; what was told before has been moved along. */
  readonly clockSteps: readonly ClockStep[];
  /** Hours that were kept elsewhere, in the order in which they were taken in; absent where there are none. */
  readonly imports?: readonly ImportedHours[];
  /** Who foretells minutes, where anything was learned; else the finishing schedules do. */
  readonly estimator?: Estimator;
  /** How long coats take in this shop, where checks have taught it; else the labels say so. */
  readonly drying?: DryingTimes;
};

export type ImportedHours = {
  readonly id: string;
  readonly file: string;
  readonly fingerprint: string;
  readonly rows: readonly ImportedRow[];
  readonly takenAt: Instant;
};

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

/** Foretells minutes of hands, without setup. */
export type Estimator = {
  readonly expects: (step: Step, piece: Sized) => Expectation;
  /** Several steps of one piece together; null for none. */
  readonly total: (steps: readonly Step[], piece: Sized) => Expectation | null;
  /** About how many finished steps of a class it knows; old ones count less and less. */
  readonly knows: (stepClass: Step['stepClass']) => number;
  /** Who would foretell them if the bench were another: what a correction would do, before it is made. */
  readonly afterwards?: (bench: Bench) => Estimator;
};

/** How long coats take here. */
export type DryingTimes = {
  /** The time by which a product's window opens; null where the label's figure stands. */
  readonly own: (product: Product, rule: WindowRule) => OwnTime | null;
  /** What that rests on: one and the same for as long as nothing else was learned of that product. */
  readonly basis: (product: Product) => unknown;
};

/** Minutes of hands on one or more targets. `end` is null while in hand. */
export type Session = {
  readonly id: string;
  /** The facts that began and ended it. */
  readonly startFact: string;
  readonly endFact: string | null;
  readonly targets: readonly Target[];
  /** Which pair of hands, from 1. */
  readonly hand: number;
  readonly start: Instant;
  readonly end: Instant | null;
  /** What was first recorded, where a correction changed it. */
  readonly first: {
    readonly start: Instant;
    readonly end: Instant | null;
    readonly targets: readonly Target[];
  } | null;
  /** A correction said when it ended. */
  readonly endCorrected?: true;
  /** The steps that were worked in it teach nothing. */
  readonly keptFromLearning?: true;
  /** A correction said that it never was. */
  readonly dropped: boolean;
};

/** A count-down that belongs to no schedule. */
export type OddTimer = {
  readonly id: string;
  readonly piece: string | null;
  readonly label: string;
  readonly start: Instant;
  readonly ms: Milliseconds;
  readonly closedAt: Instant | null;
  readonly fact: string;
};

/** A mixed product that stands on the bench until it is washed out. */
export type Pot = {
  readonly id: string;
  readonly letter: string;
  readonly product: Product;
  readonly mixedAt: Instant;
  readonly washedAt: Instant | null;
  /** The facts that began and ended it. */
  readonly fact: string;
  readonly washedFact: string | null;
};

/** Groups of facts that can be taken back and brought back; the last of each list is next. */
export type Trail = { readonly done: readonly string[]; readonly takenBack: readonly string[] };

export type Shutdown = {
  readonly at: Instant;
  readonly answers: Readonly<Partial<Record<OvernightQuestion, OvernightAnswer>>>;
};

export type { Reading };
