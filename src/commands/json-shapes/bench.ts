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

/** The same with a surface that was measured too. */
export type MeteredJson = AirJson & { readonly surfaceC: number | null };

/** The last reading, the temperature at which that air wets a surface, and how many times as long coats now take. */
export type AirNowJson = MeteredJson & {
  readonly dewPointC: number;
  /** Null where no coat is drying, or air moves none of them. */
  readonly coatsTake: { readonly least: number; readonly most: number } | null;
};

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

/** A mixed product that several pieces may share. */
export type PotJson = {
  readonly id: string;
  readonly letter: string;
  readonly product: string;
  readonly mixed: string;
  /** Null while it is still to be washed out. */
  readonly washedOut: string | null;
};

/** `pot` */
export type PotsJson = { readonly pots: readonly PotJson[] };

/** One row of the bench: a piece, an odd timer, or a pot. */
export type BenchRowJson = {
  readonly piece: PieceNameJson | null;
  readonly timer: { readonly id: string; readonly label: string } | null;
  /** A pot that has a row of its own. */
  readonly pot: PotJson | null;
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
  readonly air: AirNowJson | null;
  /** In the order of the bench: what is lost first comes first. */
  readonly rows: readonly BenchRowJson[];
  readonly takeBack: string | null;
  readonly bringBack: string | null;
  /** Whether a keeper stands by to ping while no screen is open. */
  readonly keeper: boolean;
  /** Pieces on which something was used whose rags heat up, since such rags were last dealt with. */
  readonly rags: readonly PieceNameJson[];
};

/** Every command that records something about the bench. */
export type RecordedJson = {
  /** What was recorded, in words. */
  readonly recorded: string;
  /** What is wrong with what was done all the same: a pot past its life, air that is against the coat begun with it. */
  readonly warns: readonly string[];
  /** The instant it is about. */
  readonly at: IsoInstant;
  /** How the piece stands now; null where it has left the bench or none is meant. */
  readonly row: BenchRowJson | null;
  /** Of the steps that were picked up, begun or put in; what can kill comes first. */
  readonly cautions: readonly CautionJson[];
  /** Of a piece that was added or described and that nothing was done to yet; else null. */
  readonly outlook: OutlookJson | null;
};

/** What a piece will take, over every way that it can still go through its finishing schedule. */
export type OutlookJson = {
  /** Hands-on minutes without setup: between these with that chance or a higher one. */
  readonly lowMinutes: number;
  readonly highMinutes: number;
  readonly chance: number;
  /** `finishing schedule` or `learned minutes`. */
  readonly model: string;
  /** The day on which it is done at the earliest, 1 for the day on which it is begun: on the shortest way, on the longest. */
  readonly leastDays: number;
  readonly mostDays: number;
  /** The same by the labels alone, without the shop's air and what checks have taught. */
  readonly leastDaysByLabel: number;
  readonly mostDaysByLabel: number;
};

export type CautionJson = {
  /** The same for the same thing to be careful about. */
  readonly id: string;
  readonly says: string;
  /** Until when, and what to do till then; null for most. */
  readonly until: IsoInstant | null;
  readonly then: string | null;
  readonly deadly: boolean;
  /** A publication, or "common practice, no source"; null for what the piece's own product or step says. */
  readonly source: string | null;
};

/** `windows` */
export type WindowsJson = {
  readonly at: IsoInstant;
  readonly windows: readonly (WindowJson & {
    readonly piece: PieceNameJson | null;
    readonly sums: readonly SumJson[];
  })[];
};

/** The sum by which a stretch begins when it does. */
export type SumJson = {
  readonly meaning: string;
  readonly begins: IsoInstant;
  /** `label 2 h x 1.9 for 15 C 65 %, from last stroke 11:22` */
  readonly says: string;
  readonly spans: readonly {
    readonly labelMinutes: number;
    /** This shop's own time that stands in for the label's, as checks taught it, and from how many coats. */
    readonly ownMinutes: number | null;
    readonly ownCoats: number | null;
    /** As long as it came out in the shop's air. */
    readonly minutes: number;
    /** How many readings of the air counted; null where air does not move it. */
    readonly readings: number | null;
    /** From when on the usual night low counted for want of a reading. */
    readonly nightLowFrom: IsoInstant | null;
  }[];
};
