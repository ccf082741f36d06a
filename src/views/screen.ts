import type { Instant } from '../tracker/time/index.ts';
import type { Line } from './drawing/line.ts';
import type { Press } from './keys/press.ts';
import type { BenchPort, PingWays, Snapshot } from './port.ts';
import type { Screen } from './screens.ts';
import type { Theme } from './theme/index.ts';

/** What a screen is drawn from, all of one moment. */
export type View = {
  readonly snapshot: Snapshot;
  readonly now: Instant;
  readonly columns: number;
  readonly rows: number;
  readonly theme: Theme;
  /** Told by the last key, shown until the next. */
  readonly message: Message | null;
  /** By which ways pings go out on this machine, where that is known. */
  readonly pingWays?: PingWays;
  /** Rows of the bench, by their key, that have just changed their place. */
  readonly moved?: ReadonlyMap<string, Instant>;
  /** The demo can be opened from here. */
  readonly hasDemo?: boolean;
};

export type Message = {
  readonly text: string;
  readonly refused: boolean;
  /** Done, but something is wrong with it: not to be missed. */
  readonly warns?: true;
};

/** A list to pick from, drawn between the lines above and the foot. */
export type Pick = {
  readonly items: readonly { readonly label: string; readonly value: string }[];
  readonly from: number;
  /** The row, from 0, at which the list begins, and how many rows it may take. */
  readonly row: number;
  readonly height: number;
};

/** A drawn screen: at most as many lines as the terminal has rows, none wider than it. */
export type Frame = {
  readonly lines: readonly Line[];
  readonly pick?: Pick;
  /** Where a text field has its cursor. */
  readonly cursor?: { readonly x: number; readonly y: number };
  /** The same for a screen reader, where the lines don't read aloud as they are. */
  readonly spoken?: () => string;
  /** Figures below ten minutes show seconds; the screen then asks for a tick each second. */
  readonly ticking?: boolean;
};

/** What a key did to a screen. */
export type Step<State> = {
  readonly state?: State;
  /** Lays another screen on top, puts one in its place, or goes back: to the one below, or to the bench from wherever it is. */
  readonly open?: Screen;
  readonly replace?: Screen;
  readonly back?: true | 'bench';
  /** With `back`: the piece that the bench then selects. */
  readonly select?: string;
  readonly leave?: true;
  readonly message?: Message | null;
  /** A guard let the key do nothing: what was said before it still stands. */
  readonly heldBack?: true;
};

/** One screen: pure drawing, and what keys do. `port` is for intents; state is only what the screen itself keeps. */
export type ScreenModule<State extends { readonly is: string }> = {
  readonly draw: (state: State, view: View) => Frame;
  readonly press: (state: State, press: Press, view: View, port: BenchPort) => Step<State>;
  /** Several characters came at once while no field is open: a leaning glove or a paste. Without it each counts. */
  readonly many?: (state: State, presses: readonly Press[], view: View) => Step<State>;
  /** A value was picked from the frame's list. */
  readonly picked?: (state: State, value: string, view: View, port: BenchPort) => Step<State>;
  /** Loads what the screen shows from the disk; called once when it opens. */
  readonly load?: (state: State, port: BenchPort) => Promise<State>;
  /** Ends what `load` began: no screen of this kind is open any more. */
  readonly closed?: (port: BenchPort) => void;
  /** While true, keys are text for a field: guards and key map are off. */
  readonly typing?: (state: State) => boolean;
};

export const said = (text: string): Message => ({ text, refused: false });
export const warned = (text: string): Message => ({ text, refused: false, warns: true });
export const refused = (text: string): Message => ({ text, refused: true });
