import type {
  AirJson,
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

/** `job-card PIECE` */
export type JobCardJson = StepsJson & {
  readonly added: IsoInstant;
  readonly left: IsoInstant | null;
  /** In the order in which it happened; `row` tells the kinds apart. */
  readonly rows: readonly JobCardRowJson[];
  /** Milestones that no step waits for and that are still to come. */
  readonly curing: readonly { readonly milestone: string; readonly at: IsoInstant }[];
  readonly minutes: number;
  readonly sessions: number;
};

export type JobCardRowJson =
  | CardStepJson
  | CardCheckJson
  | {
      readonly row: 'moisture';
      readonly at: IsoInstant;
      readonly step: string | null;
      readonly part: string | null;
      /** `wood`, `untouched`. */
      readonly spot: string;
      readonly percent: number;
      readonly air: AirJson | null;
    }
  | {
      readonly row: 'note';
      readonly at: IsoInstant;
      readonly step: string | null;
      readonly text: string;
    }
  | {
      readonly row: 'hold';
      readonly at: IsoInstant;
      readonly reason: string;
      readonly askAgain: IsoDay | null;
      /** Null while it lasts. */
      readonly lifted: IsoInstant | null;
    }
  /** Changes of the plan, and comings and goings. */
  | {
      readonly row: 'plan';
      readonly at: IsoInstant;
      readonly change: string;
      readonly step: string | null;
    }
  | {
      readonly row: 'timer';
      readonly at: IsoInstant;
      readonly label: string;
      readonly minutes: number;
      readonly closed: IsoInstant | null;
    };

/** Steps and parts by their names, as they stand on the card. */
export type CardStepJson = {
  readonly row: 'step';
  readonly at: IsoInstant;
  readonly id: string | null;
  readonly name: string;
  /** Pick-up to put-down. */
  readonly minutes: number | null;
  readonly sessions: number;
  readonly done: boolean;
  readonly product: string | null;
  readonly stamps: readonly {
    readonly event: string;
    readonly agent: string | null;
    readonly pass: number;
    readonly section: number | null;
    readonly part: string | null;
    readonly at: IsoInstant;
    readonly movedFrom: IsoInstant | null;
  }[];
  /** How heavy its coats went on: `thin`, `normal`, `heavy`. */
  readonly coat: readonly {
    readonly pass: number;
    readonly part: string | null;
    readonly weight: string;
  }[];
  readonly air: AirJson | null;
  /** How its windows were met. */
  readonly outcomes: readonly {
    readonly verb: string;
    readonly milestone: string | null;
    readonly part: string | null;
    /** `in time`, `early`, `late`, `kept off`. */
    readonly outcome: string;
    /** From its beginning to what ended it. */
    readonly afterMinutes: number;
    readonly loss: string;
    readonly says: string | null;
  }[];
  readonly corrections: readonly {
    readonly session: string;
    readonly change: string;
    readonly start: IsoInstant;
    /** Minutes as first recorded. */
    readonly was: number | null;
    readonly minutes: number;
  }[];
};

export type CardCheckJson = {
  readonly row: 'check';
  readonly at: IsoInstant;
  readonly step: string | null;
  readonly part: string | null;
  readonly finding: string;
  readonly shown: string | null;
  /** Why a "not yet" came so late, where that was told. */
  readonly why: string | null;
  readonly air: AirJson | null;
  readonly minutesAfterStroke: number | null;
  readonly movedFrom: IsoInstant | null;
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
