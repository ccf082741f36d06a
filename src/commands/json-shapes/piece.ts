import type {
  CautionJson,
  HoldJson,
  IsoDay,
  IsoInstant,
  PartNameJson,
  PieceNameJson,
  StepNameJson,
} from './bench.ts';

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
  /** What of the show surface is slow to work by hand; `share` from 0 to 1. */
  readonly profile: { readonly shape: string; readonly share: number } | null;
  /** How many there are to take off, to glue, to fit. */
  readonly fittings: number | null;
  readonly joints: number | null;
  readonly drawers: number | null;
  readonly yearMade: number | null;
  readonly kind: string | null;
  readonly promised: IsoDay | null;
  readonly parts: readonly PartNameJson[];
  readonly hold: HoldJson | null;
  /** Pieces that it should match. */
  readonly matches: readonly MatchJson[];
  /** What the meter readings come to, one for each part that was read and for the whole. */
  readonly moisture: readonly MoistureJson[];
  readonly steps: readonly StepJson[];
};

export type MatchJson = {
  /** As it was called when it was told. */
  readonly name: string;
  /** Null where it is not at hand. */
  readonly piece: PieceNameJson | null;
  readonly differences: readonly {
    /** `product`, `batch`, `coats`, `rounds`, `dwell`, `step`. */
    readonly what: string;
    readonly says: string;
  }[];
};

export type MoistureJson = {
  readonly part: PartNameJson | null;
  readonly wood: { readonly at: IsoInstant; readonly percent: number };
  /** `untouched` (a spot of the same piece), `air` (what the shop's air gives); null with neither. */
  readonly against: {
    readonly by: string;
    readonly percent: number;
    readonly at: IsoInstant;
  } | null;
  readonly over: number | null;
  /** Null where there is nothing to hold it against, or where the wood was wetted since. */
  readonly dryEnough: boolean | null;
  /** The step whose salts make the meter read high. */
  readonly saltsFrom: StepNameJson | null;
  readonly wettedBy: StepNameJson | null;
  /** Whether it falls since the reading before; null where that is not asked. */
  readonly falls: boolean | null;
  /** At the rate of the last two readings; `latest` null is much later. */
  readonly dryBy: {
    readonly at: IsoInstant;
    readonly earliest: IsoInstant;
    readonly latest: IsoInstant | null;
  } | null;
};

export type StepJson = StepNameJson & {
  /** Its place in the list, from 1; commands take it for the step's name. */
  readonly place: number;
  readonly stepClass: string;
  /** `done`, `begun`, `to do`, `skipped`. */
  readonly state: string;
  /** Why it is not for this piece, by its own rule: `hardwood`; null where it is. */
  readonly leftOut: string | null;
  /** What it asks once it is done, and which answers there are; null where it asks nothing. */
  readonly asks: {
    readonly question: string;
    readonly answers: readonly { readonly id: string; readonly says: string }[];
    /** Id of the answer that was given; null where none was. */
    readonly answer: string | null;
  } | null;
  /** What keeps it from being begun until its trial was found ready; null where nothing does. */
  readonly locked: string | null;
  readonly estimate: EstimateJson;
  /** Hands-on minutes; null where none were recorded. */
  readonly minutes: number | null;
  readonly needs: readonly string[];
  readonly cautions: readonly string[];
};

/** `cautions PIECE` */
export type CautionsJson = {
  readonly piece: PieceNameJson;
  readonly step: StepNameJson | null;
  readonly cautions: readonly CautionJson[];
  /** What the air says against a coat now, a sentence each. */
  readonly air: readonly string[];
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

/** Stamps outside the sequence that would change what runs on a piece. */
export type StampsToMakeJson = {
  readonly stamps: readonly {
    readonly event: string;
    readonly agent: string | null;
    readonly step: StepNameJson | null;
    /** Key of the window that it would move, end or begin. */
    readonly window: string;
    readonly does: string;
  }[];
};
