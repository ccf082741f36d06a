import type { ClockReading } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import type { World } from '../../shell/world.ts';

/** What every command runs in. */
export type Room = {
  readonly world: World;
  /** The folder of the store. */
  readonly folder: string;
  /** The folder was named on the command line, and one without a store is more likely mistyped than meant. */
  readonly mustHaveStore: boolean;
  /** The zone asked for on the command line; null takes the shop's. */
  readonly zone: string | null;
  /** One instant for all that a command says and does. */
  readonly now: Instant;
  /** The clock as it was read then. */
  readonly clock: ClockReading;
  /** Something to know although the work goes on. */
  readonly tell: (notice: string) => void;
  /** Asks a question that is answered by y or n; null where nobody is there to ask. */
  readonly ask: ((question: string) => Promise<boolean>) | null;
};
