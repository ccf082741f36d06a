import type { Bench, Intent, OvernightAnswer, OvernightQuestion } from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import type { FinishingSchedule, Product } from '../tracker/trade/index.ts';
import type { BenchState } from './bench/bench-state.ts';
import type { Guard } from './keys/guard.ts';
import type { HoursLookedAt } from './port.ts';
import type { RefusedFor } from './parts/refused-for.ts';

/** Pieces that have left the bench, once they are loaded. */
export type PastPieces = { readonly bench: Bench; readonly problems: readonly string[] };

/** Where a field's cursor is: an offset into its text; absent it is behind it. */
type Writing = { readonly cursor?: number };

export type AddPieceState = Writing & {
  readonly is: 'add piece';
  readonly name: string;
  /** Null until they are loaded. */
  readonly schedules: readonly FinishingSchedule[] | null;
  /** What is wrong with files that were left out, a line each. */
  readonly problems?: readonly string[];
  /** Once the name is written: the schedule with which the shown part of the list begins. */
  readonly from?: number;
};

/** One opened piece. `at` is the marked step; null marks the current one. */
export type PieceState = Writing & {
  readonly is: 'piece';
  readonly piece: string;
  readonly at: string | null;
  /** What is being written, and what has been written of it. `class`: a list from which the inserted step's class is picked. */
  readonly asks?:
    'insert' | 'class' | 'reword' | 'parts' | 'describe' | 'moisture' | 'match' | 'coat';
  readonly text?: string;
  /** Where the shown part of a list begins. */
  readonly from?: number;
  /** The marked step's cautions in full, in place of the steps. */
  readonly shows?: 'cautions';
  readonly guard?: Guard;
  /** Its step waits for a trial; the same key again asks why without. */
  readonly refused?: RefusedFor;
};

export type TroubleState = Writing & {
  readonly is: 'trouble';
  readonly piece: string;
  readonly part: string | null;
  /** Where the shown part of the list begins. */
  readonly from?: number;
  /** Trouble that is on no list, while it is being written. */
  readonly text?: string;
};
/** No hand is free for what a key asked; `sessions` could be put down for it. */
export type WhichToPutDownState = {
  readonly is: 'which to put down';
  readonly intent: Extract<
    Intent,
    { do: 'pick up' | 'next stamp' | 'first stroke' | 'next section' }
  >;
  readonly sessions: readonly string[];
  /** When the key was pressed: what is chosen here counts from then. */
  readonly openedAt: Instant;
  /** Where the shown part of the list begins. */
  readonly from?: number;
};
/** A "not yet" came far too late: why? */
export type WhyLateState = { readonly is: 'why late'; readonly piece: string };
/** A stamp that no sequence expects. `from`: where the shown part of the list begins. */
export type OtherStampState = {
  readonly is: 'other stamp';
  readonly piece: string;
  readonly part: string | null;
  readonly from?: number;
};
export type ConfirmState = {
  readonly is: 'confirm';
  readonly asks: 'take off bench' | 'remove piece';
  readonly piece: string;
};
/** `day` is null while the reason is being written. */
export type HoldState = Writing & {
  readonly is: 'hold';
  readonly piece: string;
  readonly reason: string;
  readonly day: string | null;
};
export type NoteState = Writing & {
  readonly is: 'note';
  readonly piece: string;
  readonly step: string | null;
  readonly text: string;
};
export type ConditionsState = Writing & {
  readonly is: 'conditions';
  readonly text: string;
  /** What was written could be either of these: asked about. */
  readonly could?: readonly [string, string];
};
export type OddTimerState = Writing & {
  readonly is: 'odd timer';
  readonly text: string;
  readonly piece: string | null;
};
/** `products` is null until they are loaded. */
export type PotsState = {
  readonly is: 'pots';
  readonly from?: number;
  readonly products: readonly Product[] | null;
};
/** `products` is null until they are loaded. */
export type UseProductState = {
  readonly is: 'use product';
  readonly piece: string;
  readonly step: string;
  readonly from?: number;
  readonly products: readonly Product[] | null;
  /** What is wrong with files that were left out, a line each. */
  readonly problems?: readonly string[];
};
export type KeysState = { readonly is: 'keys'; readonly from?: number };
export type PingsState = {
  readonly is: 'pings';
  readonly from: number;
};
/** `text`: what is being written for the marked setting. */
export type SettingsState = Writing & {
  readonly is: 'settings';
  readonly at: number;
  readonly text?: string;
};
/** `at`: the question that is asked. `from`: where the shown part of what falls due begins. */
export type ShutState = Writing & {
  readonly is: 'shut up shop';
  readonly answers: Readonly<Partial<Record<OvernightQuestion, OvernightAnswer>>>;
  readonly at: number;
  readonly from?: number;
  /** When somebody is back, if not on the usual morning. */
  readonly backAt?: Instant;
  /** That time, while it is being written. */
  readonly text?: string;
};
export type LeaveState = {
  readonly is: 'leave';
  readonly from?: number;
  /** The key that opened it may still be held down. */
  readonly openedAt?: Instant;
};

/** What is asked while a session of the piece is corrected. */
export type Correcting = Writing & {
  readonly asks: 'session' | 'change' | 'start' | 'end' | 'piece' | 'step';
  /** The marked row of a list. */
  readonly at: number;
  /** The session that is being corrected; null while it is being picked. */
  readonly session: string | null;
  /** The piece it was, while its step is being picked. */
  readonly piece: string | null;
  readonly text: string;
};

export type HoursPage = 'classes' | 'schedules' | 'over time' | 'ranges' | 'back-test' | 'where';

/** `piece` null shows all finished pieces; `last` is then the piece to go back to. `at` is the marked row. */
export type HoursState = {
  readonly is: 'hours';
  readonly piece: string | null;
  readonly last?: string | null;
  readonly at: number;
  readonly past: PastPieces | null;
  /** Absent: folded by step class. */
  readonly by?: 'class' | 'step';
  readonly correcting?: Correcting | null;
  /** A piece was asked to be left out of learning, or taken in again: the same key again means it. */
  readonly leaving?: { readonly piece: string; readonly at: Instant };
  /** How all finished pieces are looked at; absent: by step class. */
  readonly page?: HoursPage;
};
/** `looked` is null while the file's name is being written or the file is read. */
export type ImportHoursState = Writing & {
  readonly is: 'import hours';
  readonly text: string;
  readonly isRead?: true;
  readonly looked: HoursLookedAt | null;
  readonly from: number;
};
export type JobCardState = {
  readonly is: 'job card';
  readonly piece: string;
  readonly from: number;
  readonly past: PastPieces | null;
};
/** `at` is the marked piece of those found. */
export type PastState = Writing & {
  readonly is: 'past pieces';
  readonly find: string;
  /** The name to find is being written. */
  readonly finding?: boolean;
  readonly at: number;
  readonly past: PastPieces | null;
};

/** What a step with a question showed. `from`: where the shown part of the list begins. */
export type QuestionState = {
  readonly is: 'question';
  readonly piece: string;
  readonly step: string;
  readonly from?: number;
};
/** Why a step is begun although its trial wasn't found ready. */
export type WithoutTrialState = {
  readonly is: 'without trial';
  readonly piece: string;
  readonly part: string | null;
  readonly step: string;
};

/** Every screen there is, told apart by its name. */
export type Screen =
  | BenchState
  | AddPieceState
  | PieceState
  | TroubleState
  | WhyLateState
  | OtherStampState
  | WhichToPutDownState
  | QuestionState
  | WithoutTrialState
  | ConfirmState
  | HoldState
  | NoteState
  | ConditionsState
  | OddTimerState
  | PotsState
  | UseProductState
  | KeysState
  | PingsState
  | SettingsState
  | ShutState
  | LeaveState
  | HoursState
  | ImportHoursState
  | JobCardState
  | PastState;

export type ScreenName = Screen['is'];
