import type { IsoInstant, MeteredJson, PieceNameJson, PotJson } from './bench.ts';

/** `pings` */
export type PingsJson = {
  readonly sent: readonly {
    readonly id: string;
    readonly at: IsoInstant;
    readonly text: string;
    readonly loud: boolean;
    readonly piece: string | null;
    readonly seen: IsoInstant | null;
    /** Null until it went out. */
    readonly ways: readonly string[] | null;
    readonly failures: readonly string[];
  }[];
  readonly toCome: readonly PingToComeJson[];
};

export type PingToComeJson = {
  readonly at: IsoInstant;
  readonly text: string;
  readonly loud: boolean;
  readonly piece: PieceNameJson | null;
};

/** `seen` */
export type SeenJson = { readonly seen: readonly string[] };

/** `overnight` without answers */
export type OvernightJson = {
  readonly at: IsoInstant;
  readonly backAt: IsoInstant;
  /** Edges of windows that fall while nobody is there, worst first. */
  readonly fallsDue: readonly {
    readonly piece: PieceNameJson | null;
    readonly timer: string | null;
    readonly pot: string | null;
    readonly verb: string;
    readonly at: IsoInstant;
    /** What ends then and what begins: `go`, `keep off`, `late` ... */
    readonly ends: string;
    readonly begins: string;
    readonly loss: string;
    readonly says: string | null;
  }[];
  /** What can still spoil. */
  readonly spoils: readonly { readonly piece: PieceNameJson | null; readonly verb: string }[];
  /** What is worth doing before. */
  readonly beforeYouGo: readonly {
    readonly piece: PieceNameJson;
    /** Null where a single act is enough. */
    readonly step: string | null;
    readonly verb: string;
    readonly by: IsoInstant;
    readonly saves: string | null;
  }[];
  /** Mixed and not washed out. */
  readonly openPots: readonly PotJson[];
  readonly questions: readonly string[];
};

/** `conditions` */
export type ConditionsJson = { readonly readings: readonly MeteredJson[] };

/** `settings` */
export type SettingsJson = {
  readonly settings: readonly {
    readonly name: string;
    readonly value: string | number | boolean;
    readonly standard: string | number | boolean;
    readonly choices: readonly (string | number | boolean)[] | null;
    readonly help: string;
  }[];
  /** Keys moved by the user. */
  readonly keys: Readonly<Record<string, readonly string[]>>;
};

/** `settings NAME VALUE` */
export type SetJson = { readonly set: string; readonly value: string | number | boolean | null };

/** `schedules` */
export type SchedulesJson = {
  readonly schedules: readonly {
    readonly id: string;
    readonly name: string;
    readonly summary: string;
    /** All steps of the file, and their minutes, also of those that are never in together. */
    readonly steps: number;
    readonly lowMinutes: number;
    readonly highMinutes: number;
    /** Over the ways that a piece can go through it: steps, and hands-on minutes. */
    readonly leastSteps: number;
    readonly mostSteps: number;
    readonly shortestMinutes: number;
    readonly longestMinutes: number;
    /** The day on which it is done at the earliest, 1 for the day on which it is begun: on the shortest way, on the longest. */
    readonly leastDays: number;
    readonly mostDays: number;
  }[];
  readonly problems: readonly FileProblemJson[];
};

/** `schedules check FILE`; without FILE `file` is the folder of one's own files. */
export type CheckedJson = {
  readonly file: string;
  readonly problems: readonly FileProblemJson[];
  /** Worth a look; the file counts all the same. */
  readonly remarks: readonly FileProblemJson[];
};

export type FileProblemJson = {
  readonly file: string;
  readonly line: number;
  /** Counted from 1: in YAML the sign in its line, in CSV the cell in its line. */
  readonly column: number;
  readonly field: string;
  readonly found: string;
  readonly expected: string;
  readonly nearest: readonly string[];
  readonly says: string;
  readonly todo: string;
};

/** `over BELOW ABOVE`, `over BELOW` and `over` */
export type OverJson = {
  readonly below: string | null;
  readonly above: string | null;
  /** `yes`, `after`, `no`; null where the table doesn't say, or where no pair was asked for. */
  readonly verdict: string | null;
  /** What it says to a pair that it does not know. */
  readonly says: string | null;
  /** The row that decides; without a pair those on what was asked for, or all of them. */
  readonly rows: readonly OverRowJson[];
};

export type OverRowJson = {
  /** As it is written, with names of groups. */
  readonly called: { readonly below: string; readonly above: string };
  /** Product classes. */
  readonly below: readonly string[];
  readonly above: readonly string[];
  readonly verdict: string;
  /** With `after`: `dry`, `scuffed`, `a step between`, `judgement`. */
  readonly first: string | null;
  readonly waitMinutes: number | null;
  readonly why: string;
  readonly instead: string | null;
  readonly source: string;
};

/** `product` */
export type ProductsJson = {
  readonly products: readonly {
    readonly id: string;
    readonly name: string;
    readonly class: string;
    /** Of one's own can; null where its file does not say, or it is a generic class. */
    readonly batch: string | null;
    readonly openedOn: string | null;
    readonly keepsTill: string | null;
  }[];
};

/** `schedules copy ID` and `product copy CLASS NEW-ID` */
export type CopiedJson = { readonly copied: string; readonly file: string };

/** `keys` */
export type KeysJson = {
  readonly keys: readonly {
    readonly act: string;
    readonly keys: readonly string[];
    readonly says: string;
    /** Its number in the list behind `/`. */
    readonly listed: number | null;
  }[];
};

/** `keep`, once it has ended. */
export type KeeperJson = {
  readonly ended: 'nothing runs' | 'told to' | 'another is there';
};

/** `keep --unit` */
export type UnitJson = { readonly supervisor: string; readonly text: string };

/** `calendar` */
export type CalendarJson = {
  /** Where it was written; null where it was not. */
  readonly file: string | null;
  readonly entries: readonly {
    readonly id: string;
    readonly summary: string;
    readonly description: string;
    /** An instant, or a day. */
    readonly from: string;
    readonly to: IsoInstant | null;
    readonly alarms: readonly { readonly at: IsoInstant; readonly says: string }[];
  }[];
};

/** `rags` */
export type RagsJson = { readonly rags: readonly PieceNameJson[] };

/** `export` and `import` */
export type TransferJson = {
  /** Null where an export is in `text`. */
  readonly file: string | null;
  /** The export itself, where no file was named to hold it. */
  readonly text: string | null;
  /** False where an import found everything there already. */
  readonly changed: boolean;
  readonly holds: {
    readonly benchFacts: number;
    readonly historyFacts: number;
    readonly readings: number;
    readonly pingFacts: number;
    readonly years: readonly number[];
    /** Names of the user's own files of schedules and products. */
    readonly schedules: readonly string[];
  };
};

/** `checkup` */
export type CheckupJson = {
  /** How many of the findings are. */
  readonly wrong: number;
  readonly findings: readonly {
    /** `store`, `lock`, `backups`, `folder`, `keeper`, `notifier`, `hook`, `awake`, `terminal`, `clock`, `schedules`. */
    readonly about: string;
    /** `in order`, `note`, `wrong`. */
    readonly state: string;
    readonly says: string;
    readonly todo: string | null;
  }[];
};
