import type { Room } from './room.ts';
import type { ExitCode } from './exit-codes.ts';

/** What a command answers. Only one of the two forms is ever worked out. */
export type Answer = {
  /** Lines for a person. Control characters in them are written out before they are printed. */
  readonly lines: () => readonly string[];
  /** One of the shapes in json-shapes/. */
  readonly json: () => object;
  /** Absent: done. */
  readonly code?: ExitCode;
};

/** Nothing was done. */
export type Failure = {
  readonly failed: 'refused' | 'unknown' | 'store' | 'usage';
  /** What is not done, why, and what to do instead. */
  readonly says: string;
  /** What was meant perhaps, nearest first. */
  readonly nearest: readonly string[];
};

export const isFailure = (value: object | null): value is Failure =>
  value !== null && 'failed' in value;

export const failure = (
  failed: Failure['failed'],
  says: string,
  nearest: readonly string[] = [],
): Failure => ({ failed, says, nearest });

/** What stood on the command line, by the names under which a command takes it. */
export type Given = {
  /** An argument that must be there. */
  readonly word: (name: string) => string;
  /** An argument or the value of an option; null where it was not given. */
  readonly maybe: (name: string) => string | null;
  /** As many as came. */
  readonly list: (name: string) => readonly string[];
  /** The same as one sentence, so that it needs no quotes. */
  readonly sentence: (name: string) => string;
  readonly has: (flag: string) => boolean;
};

export type CommandOption = readonly [flags: string, says: string];

/** One command: what it takes and what it does. */
export type CommandFile = {
  /** `<piece> [text...]`: must be there, may be there, as many as come. */
  readonly takes?: string;
  readonly options?: readonly CommandOption[];
  /** More for its help page than the one line of the list. */
  readonly help?: string;
  /** In a folder that is named and holds no store, it begins one instead of being refused. */
  readonly beginsStore?: true;
  readonly run: (room: Room, given: Given) => Answer | Failure | Promise<Answer | Failure>;
};
