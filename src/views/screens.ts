import type { Bench, OvernightAnswer, OvernightQuestion } from '../tracker/bench/index.ts';
import type { FinishingSchedule } from '../tracker/trade/index.ts';
import type { BenchState } from './bench/bench-state.ts';
import type { ScreenModule } from './screen.ts';

/** Pieces that have left the bench, once they are loaded. */
export type PastPieces = { readonly bench: Bench; readonly problems: readonly string[] };

export type AddPieceState = {
  readonly is: 'add piece';
  readonly name: string;
  /** Null while the name is being written; then the list to pick from. */
  readonly schedules: readonly FinishingSchedule[] | null;
  readonly loaded?: {
    readonly schedules: readonly FinishingSchedule[];
    readonly problems: readonly string[];
  };
};

/** One opened piece. `at` is the marked step; null marks the current one. */
export type PieceState = {
  readonly is: 'piece';
  readonly piece: string;
  readonly at: string | null;
  readonly asks?: 'insert' | 'reword' | 'parts' | 'describe' | 'note' | 'before';
  readonly text?: string;
};

export type TroubleState = {
  readonly is: 'trouble';
  readonly piece: string;
  readonly part: string | null;
  readonly text?: string;
};
export type ConfirmState = {
  readonly is: 'confirm';
  readonly asks: 'take off bench' | 'remove piece';
  readonly piece: string;
};
export type HoldState = {
  readonly is: 'hold';
  readonly piece: string;
  readonly reason: string;
  readonly day: string | null;
};
export type NoteState = {
  readonly is: 'note';
  readonly piece: string;
  readonly step: string | null;
  readonly text: string;
};
export type ConditionsState = { readonly is: 'conditions'; readonly text: string };
export type OddTimerState = {
  readonly is: 'odd timer';
  readonly text: string;
  readonly piece: string | null;
};
export type KeysState = { readonly is: 'keys'; readonly from?: number };
export type PingsState = { readonly is: 'pings'; readonly from: number };
export type SettingsState = {
  readonly is: 'settings';
  readonly at: number;
  readonly text?: string;
};
export type ShutState = {
  readonly is: 'shut up shop';
  readonly answers: Readonly<Partial<Record<OvernightQuestion, OvernightAnswer>>>;
  readonly at: number;
};
export type LeaveState = { readonly is: 'leave' };

/** `piece` null shows all finished pieces. `session` set: that session is being corrected. */
export type HoursState = {
  readonly is: 'hours';
  readonly piece: string | null;
  readonly at: number;
  readonly past: PastPieces | null;
  readonly correcting?: {
    readonly at: number;
    readonly asks: 'pick' | 'start' | 'end' | 'piece';
    readonly text: string;
  };
};
export type JobCardState = {
  readonly is: 'job card';
  readonly piece: string;
  readonly from: number;
  readonly past: PastPieces | null;
};
export type PastState = {
  readonly is: 'past pieces';
  readonly find: string;
  readonly at: number;
  readonly past: PastPieces | null;
};

/** Every screen there is, told apart by its name. */
export type Screen =
  | BenchState
  | AddPieceState
  | PieceState
  | TroubleState
  | ConfirmState
  | HoldState
  | NoteState
  | ConditionsState
  | OddTimerState
  | KeysState
  | PingsState
  | SettingsState
  | ShutState
  | LeaveState
  | HoursState
  | JobCardState
  | PastState;

export type ScreenName = Screen['is'];

export type ScreenRegistry = {
  readonly [Name in ScreenName]: ScreenModule<Extract<Screen, { is: Name }>>;
};
