/**
 * What commands answer with `--json`: one object on one line. These shapes are for other programs, so a field keeps its
 * name and meaning; new ones may come beside them. No field is ever left out: what isn't there is null or an empty list.
 * Nothing here depends on language, units or the 12 or 24 hours of the shop.
 */

/** `2026-11-24T14:29:00.000-05:00`: an instant, told with the offset of the shop's zone. */
export type IsoInstant = string;

/** `2026-11-28`: a day of the shop's calendar. */
export type IsoDay = string;

/** What every command answers where it does nothing; the exit code says which kind of no it is. */
export type RefusedJson = {
  readonly refused: string;
  /** What was meant perhaps, nearest first. */
  readonly nearest: readonly string[];
};

export type PieceNameJson = {
  readonly id: string;
  /** Null once it has left the bench. */
  readonly number: number | null;
  readonly name: string;
};

export type StepNameJson = { readonly id: string; readonly name: string };
export type PartNameJson = { readonly id: string; readonly name: string };

/** Degrees Celsius and percent. */
export type AirJson = { readonly tempC: number; readonly rh: number; readonly readAt: IsoInstant };

export type StretchJson = {
  readonly meaning: string;
  /** What is lost in it: `spoils`, `costs work`, `costs nothing`. */
  readonly loss: string;
  /** The extra work or the rescue, in words. */
  readonly says: string | null;
  readonly begins: IsoInstant;
  /** Null where it never ends, or its end hangs on a stamp that wasn't made yet. */
  readonly ends: IsoInstant | null;
};

export type WindowJson = {
  readonly key: string;
  readonly kind: string;
  readonly verb: string;
  readonly milestone: string | null;
  /** Null for an odd timer. */
  readonly step: StepNameJson | null;
  readonly part: PartNameJson | null;
  readonly pass: number;
  readonly section: number | null;
  /** `before`, `open`, `closing`, `late`, `barred`, `done`. */
  readonly state: string;
  readonly begun: IsoInstant;
  /** When it can first be used without loss. */
  readonly opens: IsoInstant | null;
  /** When something is lost next. */
  readonly closes: IsoInstant | null;
  readonly assumed: boolean;
  readonly foundReady: IsoInstant | null;
  readonly stretches: readonly StretchJson[];
};

export type HoldJson = {
  readonly reason: string;
  readonly since: IsoInstant;
  readonly askAgain: IsoDay | null;
};

/** One row of the bench: a piece, or an odd timer that belongs to none. */
export type BenchRowJson = {
  readonly piece: PieceNameJson | null;
  readonly timer: { readonly id: string; readonly label: string } | null;
  /** How it stands, as the rows are ordered: `spoils`, `in hand`, `costs work` ... */
  readonly rank: string;
  readonly part: PartNameJson | null;
  /** The step that is next. */
  readonly step: StepNameJson | null;
  /** What the next-stamp key and `next-stamp` would do; null for a timer. */
  readonly next: string | null;
  readonly inHandSince: IsoInstant | null;
  /** The window that decides how it stands. */
  readonly window: WindowJson | null;
  readonly windows: readonly WindowJson[];
  readonly hold: HoldJson | null;
  readonly promised: IsoDay | null;
};

/** `bench` */
export type BenchJson = {
  readonly at: IsoInstant;
  readonly air: AirJson | null;
  /** In the order of the bench: what is lost first comes first. */
  readonly rows: readonly BenchRowJson[];
  readonly takeBack: string | null;
  readonly bringBack: string | null;
};

/** Every command that records something about the bench. */
export type RecordedJson = {
  /** What was recorded, in words. */
  readonly recorded: string;
  /** The instant it is about. */
  readonly at: IsoInstant;
  /** How the piece stands now; null where it has left the bench or none is meant. */
  readonly row: BenchRowJson | null;
};

/** Minutes of work: estimated, with the range and the chance it claims. */
export type EstimateJson = {
  readonly minutes: number;
  readonly low: number;
  readonly high: number;
  readonly chance: number;
  readonly model: string;
};

/** `steps PIECE` */
export type StepsJson = {
  readonly piece: PieceNameJson;
  readonly schedule: { readonly id: string; readonly name: string };
  readonly wood: string | null;
  readonly areaM2: number | null;
  readonly yearMade: number | null;
  readonly kind: string | null;
  readonly promised: IsoDay | null;
  readonly parts: readonly PartNameJson[];
  readonly hold: HoldJson | null;
  readonly steps: readonly StepJson[];
};

export type StepJson = StepNameJson & {
  /** Its place in the list, from 1; commands take it for the step's name. */
  readonly place: number;
  readonly stepClass: string;
  /** `done`, `begun`, `to do`, `skipped`. */
  readonly state: string;
  readonly estimate: EstimateJson;
  /** Hands-on minutes; null where none were recorded. */
  readonly minutes: number | null;
  readonly needs: readonly string[];
  readonly cautions: readonly string[];
};

/** `windows` */
export type WindowsJson = {
  readonly at: IsoInstant;
  readonly windows: readonly (WindowJson & { readonly piece: PieceNameJson | null })[];
};

/** `hours PIECE` */
export type PieceHoursJson = {
  readonly piece: PieceNameJson;
  readonly steps: readonly (StepNameJson & {
    readonly stepClass: string;
    readonly state: string;
    readonly estimate: EstimateJson;
    readonly minutes: number | null;
    readonly setupMinutes: number;
    /** Setup was told apart by the schedule's share. */
    readonly about: boolean;
    readonly sessions: number;
    /** Where the minutes lie: `inside` the range, `over`, `under`. */
    readonly verdict: string | null;
  })[];
  readonly done: { readonly estimate: EstimateJson; readonly minutes: number } | null;
  readonly toGo: EstimateJson | null;
  readonly setupMinutes: number;
  readonly otherMinutes: number;
  readonly recordedMinutes: number;
  readonly sessions: number;
};

/** `hours` */
export type FinishedHoursJson = {
  readonly pieces: number;
  readonly since: IsoInstant | null;
  readonly until: IsoInstant | null;
  readonly classes: readonly {
    readonly stepClass: string;
    readonly pieces: number;
    /** Minutes by estimate of the middle piece: 2 is twice as long. */
    readonly ratio: number | null;
    readonly low: number | null;
    readonly high: number | null;
  }[];
  readonly rangesHeld: {
    readonly held: number;
    readonly of: number;
    readonly claimed: number | null;
  };
};

/** `sessions PIECE` */
export type SessionsJson = {
  readonly piece: PieceNameJson;
  readonly sessions: readonly SessionJson[];
};

export type SessionJson = {
  /** `correct-session` takes it. */
  readonly place: number;
  readonly id: string;
  readonly targets: readonly {
    readonly piece: PieceNameJson;
    readonly part: PartNameJson | null;
    readonly step: StepNameJson | null;
  }[];
  readonly start: IsoInstant;
  /** Null while in hand. */
  readonly end: IsoInstant | null;
  /** The piece's share of it. */
  readonly minutes: number;
  /** As first recorded, where it was corrected. */
  readonly first: { readonly start: IsoInstant; readonly end: IsoInstant | null } | null;
  readonly dropped: boolean;
  /** Where it seems to have been left running: what it could be trimmed to. */
  readonly trimTo: IsoInstant | null;
};

/** `past` */
export type PastJson = {
  readonly pieces: readonly (PieceNameJson & {
    readonly schedule: string;
    readonly added: IsoInstant;
    readonly left: IsoInstant | null;
    readonly minutes: number;
  })[];
};

/** `job-card PIECE` */
export type JobCardJson = StepsJson & {
  readonly added: IsoInstant;
  readonly left: IsoInstant | null;
  /** In the order in which it happened. */
  readonly record: readonly JobCardEntryJson[];
  readonly minutes: number;
  readonly sessions: number;
};

export type JobCardEntryJson = {
  readonly at: IsoInstant;
  /** `stamped`, `done`, `checked`, `note`. */
  readonly kind: string;
  readonly step: StepNameJson | null;
  readonly part: PartNameJson | null;
  readonly pass: number | null;
  readonly section: number | null;
  /** The stamp's event, the finding, or the note. */
  readonly what: string;
  readonly agent: string | null;
  readonly product: string | null;
  readonly air: AirJson | null;
};

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
  readonly fallsDue: readonly PingToComeJson[];
  /** Windows in which a surface can still be lost before then. */
  readonly spoils: readonly { readonly piece: PieceNameJson | null; readonly verb: string }[];
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
