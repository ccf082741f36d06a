import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The clock of a few real programs, moved while they run. */
export type MovedClock = {
  /** What a program must find around it to go by this clock; those that it starts itself find it too. */
  readonly env: Readonly<Record<string, string>>;
  readonly now: () => number;
  /** Somebody sets the clock: the time since the machine started does not move. */
  readonly setBy: (ms: number) => void;
  /** The machine sleeps: clock and time since its start move, and no timer runs meanwhile. */
  readonly sleep: (ms: number) => void;
  readonly remove: () => void;
};

/** @param startAt what the clock shows to begin with; the real time where it is left out */
export function createMovedClock(startAt?: string): MovedClock {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-clock-'));
  const file = join(folder, 'moves.json');
  const moves = {
    setBy: startAt === undefined ? 0 : Date.parse(startAt) - Date.now(),
    sleptFor: 0,
  };
  const tell = (): void => {
    writeFileSync(`${file}.new`, JSON.stringify(moves));
    // Whole, whoever reads it meanwhile.
    renameSync(`${file}.new`, file);
  };
  tell();
  return {
    env: {
      NODE_OPTIONS: `--import ${import.meta.resolve('./moved-clock-preload.ts')}`,
      MOVED_CLOCK: file,
    },
    now: () => Date.now() + moves.setBy + moves.sleptFor,
    setBy: (ms) => {
      moves.setBy += ms;
      tell();
    },
    sleep: (ms) => {
      moves.sleptFor += ms;
      tell();
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
