import type { AirJson, IsoDay, IsoInstant } from './bench.ts';
import type { StepsJson } from './piece.ts';

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
