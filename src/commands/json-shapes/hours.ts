import type { IsoInstant, PieceNameJson, StepNameJson } from './bench.ts';
import type { EstimateJson } from './piece.ts';
import type { FileProblemJson } from './shop.ts';

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
  /** The steps of a class together: those that are done and timed, or before any is, all of them. */
  readonly byClass: readonly {
    readonly stepClass: string;
    readonly steps: number;
    readonly done: number;
    readonly estimate: EstimateJson;
    readonly minutes: number | null;
    readonly about: boolean;
    readonly verdict: string | null;
  }[];
  /** All steps that are done and timed. The estimate is of all together, not the steps' added up; so is that of `toGo`. */
  readonly done: {
    readonly estimate: EstimateJson;
    readonly minutes: number;
    readonly verdict: string | null;
  } | null;
  readonly toGo: EstimateJson | null;
  /** Hands-on minutes on steps that are begun, and how many of them `toGo` has less: of each no more than its estimate. */
  readonly begunMinutes: number;
  readonly countedOffMinutes: number;
  readonly setupMinutes: number;
  /** The schedule's setup for as many sessions. */
  readonly setupEstimatedMinutes: number;
  /** Work that belongs to no step. */
  readonly otherMinutes: number;
  readonly recordedMinutes: number;
  readonly sessions: number;
};

/** `hours` */
export type FinishedHoursJson = {
  readonly pieces: number;
  /** Of these, from hours that were kept elsewhere. */
  readonly importedPieces: number;
  readonly since: IsoInstant | null;
  readonly until: IsoInstant | null;
  /** Whole pieces: all their steps together. */
  readonly whole: LeanJson;
  readonly classes: readonly ({ readonly stepClass: string } & LeanJson)[];
  /** Single steps, the furthest off first, in either direction. */
  readonly furthestOff: readonly {
    readonly piece: PieceNameJson;
    readonly step: string;
    readonly estimatedMinutes: number;
    readonly minutes: number;
    readonly note: string | null;
  }[];
  readonly rangesHeld: {
    readonly held: number;
    readonly of: number;
    readonly claimed: number | null;
  };
  readonly schedules: readonly ({ readonly id: string; readonly name: string } & LeanJson)[];
  /** The newest first; `month` is `2026-11`. */
  readonly months: readonly ({ readonly month: string } & LeanJson)[];
  /** The last five pieces; null where that would be all. */
  readonly lastPieces: LeanJson | null;
  /** Whether minutes rise against the estimates, piece by piece; null for too few pieces. */
  readonly trend: {
    readonly direction: 'rising' | 'falling' | 'level';
    /** How often mere luck would do as much, 0..1. */
    readonly byLuck: number;
  } | null;
  /** Past ranges of whole pieces, as they were claimed then, and what then happened; the newest first. */
  readonly pastRanges: {
    readonly held: number;
    readonly of: number;
    readonly claimed: number | null;
    readonly pieces: readonly {
      readonly piece: PieceNameJson;
      readonly estimate: EstimateJson;
      readonly minutes: number;
      readonly verdict: string | null;
    }[];
  };
  /** What the time of finished pieces went into, in minutes. Imported hours are left out: they don't tell it apart. */
  readonly spent: {
    readonly pieces: number;
    readonly workingMinutes: number;
    readonly setupMinutes: number;
    /** Setup was partly told apart by the schedules' share. */
    readonly about: boolean;
    readonly otherMinutes: number;
    readonly waitingMinutes: number;
  };
  /** Step classes that cost most against their estimates, imported hours too. */
  readonly costliest: readonly {
    readonly stepClass: string;
    readonly overMinutes: number;
    readonly pieces: number;
    /** The piece that more than half of it came from. */
    readonly mostly: PieceNameJson | null;
  }[];
};

/** `hours --back-test`: past steps foretold anew, each from what was finished before it. */
export type BackTestJson = {
  /** Finished steps with minutes, the first of which only teaches. */
  readonly steps: number;
  readonly whole: BackTestRowJson | null;
  /** The first thirty; null until there are more. */
  readonly first: BackTestRowJson | null;
  readonly classes: readonly (BackTestRowJson & { readonly stepClass: string })[];
};

export type BackTestRowJson = {
  readonly steps: number;
  /** How many came out within their range, and the chance that was claimed, 0..1. */
  readonly held: number;
  readonly claimed: number;
  /** Half of the steps missed by no more than so many times, in either direction; and by the finishing schedules alone. */
  readonly missed: number;
  readonly scheduleMissed: number;
  /** `as claimed`, `too narrow`, `too wide`; null for too few steps. */
  readonly judged: string | null;
};

/** Minutes by estimate of the middle piece (2 is twice as long), and the range of four in five; null for too few. */
type LeanJson = {
  readonly pieces: number;
  readonly ratio: number | null;
  readonly low: number | null;
  readonly high: number | null;
};

/** `correct-session` and `leave-out` with `--what-if`: how many times the finishing schedule's minutes is expected. */
export type WhatIfJson = {
  readonly classes: readonly {
    readonly stepClass: string;
    readonly before: number;
    readonly after: number;
  }[];
};

/** `import-hours FILE` before they are taken */
export type ImportJson = {
  readonly lines: number;
  readonly classes: readonly {
    readonly stepClass: string;
    readonly lines: number;
    readonly pieces: number;
    readonly minutes: number;
    readonly estimatedMinutes: number;
  }[];
  readonly problems: readonly FileProblemJson[];
  readonly passedOver: readonly string[];
};

/** `import-hours` */
export type ImportsJson = {
  readonly imports: readonly {
    readonly place: number;
    readonly id: string;
    readonly file: string;
    readonly lines: number;
    readonly takenAt: IsoInstant;
  }[];
};
