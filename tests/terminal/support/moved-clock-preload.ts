import { readFileSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import os from 'node:os';

/**
 * Preloaded into the real program: its clock is the machine's, moved as a file says at that moment. Timers and
 * `performance.now()` stay the machine's own, as they do where a clock is set or a machine has slept.
 */

type Moves = { readonly setBy: number; readonly sleptFor: number };

const file = process.env['MOVED_CLOCK'] ?? '';
const moves = (): Moves => JSON.parse(readFileSync(file, 'utf8')) as Moves;

const RealDate = Date;
const realNow = Date.now;
const realUptime = os.uptime;

const now = (): number => {
  const { setBy, sleptFor } = moves();
  return realNow() + setBy + sleptFor;
};

class MovedDate extends RealDate {
  constructor(...given: readonly unknown[]) {
    super(...((given.length === 0 ? [now()] : given) as [number]));
  }
  static override now = now;
}

globalThis.Date = MovedDate as DateConstructor;
// A sleep counts for the time since the machine started, a setting of the clock doesn't.
os.uptime = () => realUptime() + moves().sleptFor / 1000;
syncBuiltinESMExports();
