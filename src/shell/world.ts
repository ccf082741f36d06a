import type { Clock } from './clock.ts';
import type { NewId } from './ids.ts';
import type { Whereabouts } from './shop.ts';

/** Everything outside the program that it may use, made once in main.ts. */
export type World = {
  readonly clock: Clock;
  readonly newId: NewId;
  readonly env: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
  readonly home: string;
  /** What a relative path counts from. */
  readonly cwd: string;
  readonly here: Whereabouts;
  /** The package's own folder, where templates/ lies. */
  readonly packageFolder: string;
  readonly version: string;
  /** Whether a person sits at both ends. */
  readonly interactive: boolean;
  /** How wide the terminal is that text goes to; null for a pipe or a file. */
  readonly columns?: number | null;
  readonly print: (text: string) => void;
  readonly printError: (text: string) => void;
  /** Shows how far something is on one line of a terminal, in place of what it showed before; '' clears it. Null without one. */
  readonly progress?: ((words: string) => void) | null;
  /** Keeps the compiled form of what ran so far for the next start, where there is a bundle. */
  readonly keepCompiledCode?: () => void;
};
