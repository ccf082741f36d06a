import type { ClockStep } from './clock-frames.ts';
import type { Instant, Milliseconds } from '../time/index.ts';
import type { Product, Step } from '../trade/schedule.ts';
import type { OwnTime, WindowRule } from '../windows/model.ts';
import type {
  BenchFact,
  Expectation,
  ImportedRow,
  OvernightAnswer,
  OvernightQuestion,
  Target,
} from './facts.ts';
import type { Piece, Sized } from './piece.ts';

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
