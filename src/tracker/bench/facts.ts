import type { CalendarDay, Instant, Milliseconds } from '../time/index.ts';
import type { Climate } from '../trade/climate.ts';
import type { Counts } from '../trade/counts.ts';
import type { LateCause } from '../trade/late-causes.ts';
import type { Profile } from '../trade/profile.ts';
import type { Product, Step, StepClass } from '../trade/schedule.ts';
import type { StampEvent } from '../windows/model.ts';

/**
 * Who told it: the person's hand, a script feeding readings, or the program noticing something of the clock's. A command
 * counts as the person's hand, whoever typed it: a key can take back what it told.
 */
export type Teller = 'person' | 'script' | 'clock';

/** What every fact carries. Facts are kept in the order of telling and are never edited or deleted. */
export type FactHead = {
  readonly id: string;
  /** What one key press made; taken back and brought back together. */
  readonly group: string;
  /** The instant it is about. */
  readonly at: Instant;
  /** When it was told. */
  readonly told: Instant;
  readonly by: Teller;
  /** Milliseconds since the machine started, and which start; null where the machine does not say. A stepped clock shows by them. */
  readonly uptimeMs: Milliseconds | null;
  readonly bootId: string | null;
};

/** The work a session or stamp is for: a piece, perhaps one part of it, perhaps one step. */
export type Target = {
  readonly piece: string;
  readonly part: string | null;
  readonly step: string | null;
};

/** What was believed about a step's minutes when it was finished. */
export type Expectation = {
  readonly minutes: number;
  readonly low: number;
  readonly high: number;
  /** The chance that the range claims, 0..1. */
  readonly chance: number;
  /** Where it came from: `finishing schedule`, or a named model. */
  readonly model: string;
};

export type Part = { readonly id: string; readonly name: string };

export const woods = ['soft', 'hard'] as const;
export type Wood = (typeof woods)[number];

/** What may be told of a piece at any time; an absent field was not touched, null takes it away. */
export type PieceDescription = Partial<Counts> & {
  readonly name?: string;
  readonly kind?: string | null;
  readonly wood?: Wood | null;
  /** Show surface in square metres. */
  readonly areaM2?: number | null;
  readonly profile?: Profile | null;
  readonly yearMade?: number | null;
  readonly promised?: CalendarDay | null;
};

export const findings = ['ready', 'not yet', 'trouble'] as const;
export type Finding = (typeof findings)[number];

/** How heavy a coat went on, as the hand that put it on tells it. */
export const coatWeights = ['thin', 'normal', 'heavy'] as const;
export type CoatWeight = (typeof coatWeights)[number];

/** Where a moisture meter was held: on the wood that was worked on, or on a spot of the piece that was left alone. */
export const moistureSpots = ['wood', 'untouched'] as const;
export type MoistureSpot = (typeof moistureSpots)[number];

/** The questions of shutting up shop. */
export const overnightQuestions = ['rags', 'pots', 'gun', 'cans', 'heat'] as const;
export type OvernightQuestion = (typeof overnightQuestions)[number];
export type OvernightAnswer = 'yes' | 'no' | 'does not apply';

/** A step on some day that these hands timed before this program was there. */
export type ImportedRow = {
  /** Noon of its day. */
  readonly at: Instant;
  readonly piece: string;
  readonly stepClass: StepClass;
  readonly minutes: number;
  readonly estimate: number;
};

export type BenchFactBodies = {
  'piece-added': {
    readonly piece: string;
    readonly number: number;
    readonly name: string;
    readonly schedule: { readonly id: string; readonly name: string; readonly hash: string };
    readonly steps: readonly Step[];
    readonly products: Readonly<Record<string, Product>>;
  };
  'piece-described': { readonly piece: string; readonly changes: PieceDescription };
  'parts-named': { readonly piece: string; readonly parts: readonly Part[] };
  /** `before` null puts it last. */
  'step-inserted': {
    readonly piece: string;
    readonly step: Step;
    readonly before: string | null;
    readonly copyOf?: string;
  };
  'step-moved': { readonly piece: string; readonly step: string; readonly before: string | null };
  'step-skipped': { readonly piece: string; readonly step: string; readonly skipped: boolean };
  'step-reworded': { readonly piece: string; readonly step: string; readonly name: string };
  /** What the step with a question showed; `answer` null takes the answer away. */
  'question-answered': {
    readonly piece: string;
    readonly step: string;
    readonly answer: string | null;
  };
  /** A step is begun although its trial wasn't found ready. */
  'trial-waived': { readonly piece: string; readonly step: string; readonly reason: string };
  /** A step not yet begun uses another product; the piece carries its own copy of it under `key`. */
  'product-chosen': {
    readonly piece: string;
    readonly step: string;
    readonly key: string;
    readonly product: Product;
  };
  'hold-placed': {
    readonly piece: string;
    readonly reason: string;
    readonly askAgain: CalendarDay | null;
  };
  'hold-lifted': { readonly piece: string };
  /** From somewhere colder: for some hours it is colder than the air about it. */
  'carried-in': { readonly piece: string };
  'piece-left-bench': { readonly piece: string };
  'piece-put-back': { readonly piece: string; readonly number: number };
  'piece-removed': { readonly piece: string };
  /** One of two pieces that should come out alike; the other has a fact of its own. */
  'match-told': {
    readonly piece: string;
    readonly partner: string;
    /** The partner's, for a record that is read without it. */
    readonly name: string;
    readonly matches: boolean;
  };
  /** `session` null: the whole piece. */
  'kept-from-learning': {
    readonly piece: string;
    readonly session: string | null;
    readonly kept: boolean;
  };
  'note-written': { readonly piece: string; readonly step: string | null; readonly text: string };
  'picked-up': {
    readonly session: string;
    readonly targets: readonly Target[];
    readonly hand: number;
  };
  'put-down': { readonly session: string };
  /** A piece was taken along into a session in hand, or out of it: what the session is for, from its beginning. */
  'targets-changed': { readonly session: string; readonly targets: readonly Target[] };
  stamped: {
    readonly piece: string;
    readonly part: string | null;
    readonly step: string;
    readonly event: StampEvent;
    readonly agent: string | null;
    readonly pass: number;
    readonly section: number | null;
    /** The shared pot that it was mixed in, taken from or washed out with. */
    readonly pot?: string;
    /** The air as last read when it was made, kept with what was put on. */
    readonly air: (Climate & { readonly readAt: Instant }) | null;
  };
  'step-done': {
    readonly piece: string;
    readonly part: string | null;
    readonly step: string;
    readonly pass: number;
    readonly expectation: Expectation;
    readonly air: (Climate & { readonly readAt: Instant }) | null;
  };
  checked: {
    readonly piece: string;
    readonly part: string | null;
    readonly step: string;
    /** Key of the window that was tried. */
    readonly window: string;
    readonly finding: Finding;
    readonly shown?: string;
    readonly air: (Climate & { readonly readAt: Instant }) | null;
  };
  /** Of one pass of a coat; the last word counts. */
  'coat-weighed': {
    readonly piece: string;
    readonly part: string | null;
    readonly step: string;
    readonly pass: number;
    readonly weight: CoatWeight;
  };
  /** Why a "not yet" came so late; `check` names its fact. */
  'lateness-explained': {
    readonly piece: string;
    readonly check: string;
    readonly cause: LateCause;
  };
  'moisture-read': {
    readonly piece: string;
    readonly part: string | null;
    readonly step: string | null;
    readonly spot: MoistureSpot;
    /** Of the wood's dry mass. */
    readonly percent: number;
    readonly air: (Climate & { readonly readAt: Instant }) | null;
  };
  'timer-started': {
    readonly timer: string;
    readonly piece: string | null;
    readonly label: string;
    readonly ms: Milliseconds;
  };
  'timer-closed': { readonly timer: string };
  /** A pot that several pieces may share. Of its product only what its own windows need is kept. */
  'pot-mixed': { readonly pot: string; readonly letter: string; readonly product: Product };
  'pot-washed': { readonly pot: string };
  /** Moves an earlier stamp, finish, check or timer start; `fact` names it. */
  'stamp-moved': { readonly fact: string; readonly to: Instant };
  /** What a session should have been: other ends, other work, or `dropped` for one that never was. */
  'session-corrected': {
    readonly session: string;
    readonly start: Instant;
    readonly end: Instant | null;
    readonly targets: readonly Target[];
    readonly dropped: boolean;
  };
  'group-withdrawn': { readonly withdrawn: string };
  'group-restored': { readonly restored: string };
  'shop-shut': {
    readonly answers: Readonly<Partial<Record<OvernightQuestion, OvernightAnswer>>>;
    readonly backAt: Instant | null;
  };
  /** Oily rags, pads, steel wool and dust of all work till then. */
  'rags-dealt-with': Readonly<Record<string, never>>;
  /** Hours that were kept elsewhere, all of one file. */
  'hours-imported': {
    readonly import: string;
    readonly file: string;
    /** Of the rows: the same hours are known again, whatever the file is called. */
    readonly fingerprint: string;
    readonly rows: readonly ImportedRow[];
  };
  'import-taken-out': { readonly import: string };
  'clock-stepped': { readonly byMs: Milliseconds };
};

export type ConditionsFactBodies = {
  'reading-taken': Climate & { readonly surfaceC?: number };
};

export type PingFactBodies = {
  /** `pings` are the keys of the pings this one sending covers. */
  'ping-claimed': {
    readonly pings: readonly string[];
    readonly text: string;
    readonly loud: boolean;
    readonly piece: string | null;
  };
  'ping-sent': {
    readonly claim: string;
    readonly ways: readonly string[];
    readonly failures: readonly string[];
  };
  'ping-acknowledged': { readonly claim: string };
};

type FactOf<Bodies> = {
  [Kind in keyof Bodies]: FactHead & { readonly kind: Kind; readonly body: Bodies[Kind] };
}[keyof Bodies];

export type BenchFact = FactOf<BenchFactBodies>;
export type ConditionsFact = FactOf<ConditionsFactBodies>;
export type PingFact = FactOf<PingFactBodies>;
export type Fact = BenchFact | ConditionsFact | PingFact;

/** A fact's kind and body, before it gets its head. */
type BodyOf<Bodies> = {
  [Kind in keyof Bodies]: {
    readonly kind: Kind;
    readonly body: Bodies[Kind];
    readonly at?: Instant;
  };
}[keyof Bodies];
export type NewBenchFact = BodyOf<BenchFactBodies>;
