import type { AirJson, IsoInstant, PieceNameJson } from './bench.ts';

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
  readonly questions: readonly string[];
};

/** `conditions` */
export type ConditionsJson = { readonly readings: readonly AirJson[] };

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
    readonly steps: number;
    readonly lowMinutes: number;
    readonly highMinutes: number;
  }[];
  readonly problems: readonly FileProblemJson[];
};

/** `schedules check FILE` */
export type CheckedJson = { readonly file: string; readonly problems: readonly FileProblemJson[] };

export type FileProblemJson = {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly field: string;
  readonly found: string;
  readonly expected: string;
  readonly nearest: readonly string[];
  readonly says: string;
  readonly todo: string;
};

/** `schedules copy ID` */
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
