import type { Bench, ImportedRow, Intent, PingSense } from '../tracker/bench/index.ts';
import type { BackTest } from '../tracker/learning/index.ts';
import type { Review } from '../tracker/review/index.ts';
import type { SettingName, Settings } from '../tracker/settings/index.ts';
import type { Instant, Milliseconds } from '../tracker/time/index.ts';
import type {
  FinishingSchedule,
  Metered,
  Product,
  TradeRules,
  Reading,
} from '../tracker/trade/index.ts';

/** Zone, clock and units of the shop, settled. */
export type Shop = {
  /** Name in the IANA list, or `auto` for the machine's own. */
  readonly zone: string;
  readonly hours: '12' | '24';
  readonly temperature: 'C' | 'F';
  readonly lengths: 'mm' | 'in';
};

/** A ping as the screen and the log show it. */
export type ShownPing = {
  readonly claim: string;
  readonly at: Instant;
  readonly text: string;
  readonly loud: boolean;
  readonly piece: string | null;
  /** When a key or a command took note of it. */
  readonly seenAt: Instant | null;
  /** By which ways it went out, once it did. */
  readonly ways: readonly string[] | null;
  readonly failures: readonly string[];
};

/** Something that stands in the way of recording; stays until it is mended. */
export type Obstacle = { readonly says: string; readonly todo: string };

/** All that screens draw from, but the present moment. A new one whenever anything changed. */
export type Snapshot = {
  readonly bench: Bench;
  readonly settings: Settings;
  readonly shop: Shop;
  readonly sense: PingSense;
  /** What may go over what, and what to be careful about. */
  readonly rules: TradeRules;
  /** Readings of the conditions, oldest first. */
  readonly readings: readonly Reading[];
  /** Oldest first. */
  readonly pings: readonly ShownPing[];
  /** Pieces with a key press that is not on the disk yet. */
  readonly unwritten: ReadonlySet<string>;
  readonly obstacle: Obstacle | null;
  /** Said once, when something was noticed: a file set aside, no desktop notifications. Newest last. */
  readonly notices: readonly string[];
  /**
   * Whether the machine is kept awake while something spoils, or why not; `kept` null where that was not wanted. `closing`
   * says what would end the pings all the same. Null while nothing spoils.
   */
  readonly awake: {
    readonly kept: boolean | null;
    readonly says: string;
    readonly closing?: string;
  } | null;
  /** Whether a keeper stands by to ping once no screen is open; `cannot` where none can be. */
  readonly keeper: 'there' | 'none' | 'cannot';
  /** Where data lives, for the messages that name it. */
  readonly folder: string | null;
  /** Past years, read and looked over beside the screens; absent while no screen asks for them. */
  readonly lookingBack?: LookingBack;
};

/** How far looking back over past years is, and what came of it so far. */
export type LookingBack = {
  /** `reading` counts years, `trying` steps that are foretold anew. */
  readonly is: 'reading' | 'trying' | 'waiting' | 'stopped' | 'failed';
  readonly done: number;
  readonly of: number;
  /** Why it failed. */
  readonly says: string | null;
  /** Of the bench and all past years; null until these are read. */
  readonly review: Review | null;
  readonly backTest: BackTest | null;
  /** Years that can't be read, a line each. */
  readonly problems: readonly string[];
  /** A past piece that was asked for, with all that is recorded of it. */
  readonly found: { readonly piece: string; readonly bench: Bench } | null;
};

export type ActReply =
  | {
      readonly ok: true;
      readonly says: string;
      readonly piece: string | null;
      readonly warns?: string;
    }
  | {
      readonly ok: false;
      readonly says: string;
      readonly nearest: readonly string[];
      /** No hand is free: with one of these sessions in `putDown` the same intent can be done. */
      readonly couldPutDown?: readonly string[];
    };

export type SchedulesReply = {
  readonly schedules: readonly FinishingSchedule[];
  /** Every product there is, in the order of their names. */
  readonly products: readonly Product[];
  /** What is wrong with files that were left out, a line each. */
  readonly problems: readonly string[];
};

/** What screens ask of the program. */
export type BenchPort = {
  readonly subscribe: (listener: () => void) => () => void;
  readonly snapshot: () => Snapshot;
  /** Answers at once; the snapshot marks it unwritten until it is on the disk. `at` for what happened earlier. */
  readonly act: (intent: Intent, at?: Instant) => ActReply;
  readonly takeReading: (read: Metered) => ActReply;
  /** Takes note of pings, by their claims, in one write. */
  readonly acknowledge: (claims: readonly string[]) => void;
  readonly choose: (name: SettingName | 'keys', text: string) => ActReply;
  readonly schedules: () => Promise<SchedulesReply>;
  /** Pieces that have left the bench, also in years gone by. */
  readonly past: () => Promise<{ readonly bench: Bench; readonly problems: readonly string[] }>;
  /** Reads a file of hours that were kept elsewhere; nothing is taken. */
  readonly lookAtHours?: (file: string) => Promise<HoursLookedAt>;
  /** Looks back over past years in a thread of its own; what comes of it is in the snapshot. */
  readonly lookBack?: LookBack;
  /** Which ways a ping has on this machine, in words; null while it isn't known. */
  readonly pingWays: () => PingWays;
  /** Puts the invented shop in place of this one; absent where that can't be done. */
  readonly openDemo?: () => void;
};

/** A file of hours that were kept elsewhere, as it was read. */
export type HoursLookedAt = {
  readonly rows: readonly ImportedRow[];
  readonly fingerprint: string;
  /** Everything that is wrong, a line each: with file, line and field, or why the file can't be read. */
  readonly refused: readonly string[];
  /** Columns that tell nothing that is wanted. */
  readonly passedOver: readonly string[];
};

export type LookBack = {
  /** Reads past years and looks them over; nothing where that was begun already. */
  readonly begin: () => void;
  /** Foretells all steps anew, once the years are read. */
  readonly backTest: () => void;
  /** Brings a past piece by its id. */
  readonly find: (piece: string) => void;
  /** Stops where it is. What came of it so far stays. */
  readonly stop: () => void;
  /** Nobody looks any more: everything of it goes. */
  readonly end: () => void;
};

export type PingWays = { readonly desktop: boolean | null; readonly says: string };

/** The one clock that screens follow: it ticks for all at once, on the second or on the minute. */
export type Ticks = {
  readonly subscribe: (listener: () => void) => () => void;
  /** The instant of the last tick or key, the same for everything in a frame. */
  readonly now: () => Instant;
  /** The present, for stamping what a key recorded. */
  readonly present: () => Instant;
  /** How often the screen wants to be told: each second while a figure below ten minutes shows, else each minute. */
  readonly pace: (every: Milliseconds) => void;
};
