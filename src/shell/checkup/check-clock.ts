import { findingsAbout, type Finding } from '../../persist/checkup/index.ts';
import { inOneFrame, type BenchFact } from '../../tracker/bench/index.ts';
import { minute, type Instant } from '../../tracker/time/index.ts';
import { clockReading, type Clock } from '../clock.ts';

const { fine, note, wrong } = findingsAbout('clock');

/** Clocks of two processes may differ by a moment. */
const leeway = 2 * minute;

export type ClockCheck = {
  readonly clock: Clock;
  readonly now: Instant;
  readonly facts: readonly BenchFact[];
  /** The shop's zone; `auto` is the machine's own. */
  readonly zone: string;
  readonly machineZone: string | undefined;
  readonly tell: (at: Instant) => string;
};

/** Whether the clock can be right, how often it was set, and whether the zone is known. */
export function checkClock(check: ClockCheck): readonly Finding[] {
  const { clock, now, facts, zone, machineZone, tell } = check;
  const findings: Finding[] = [];
  // What was told before the clock was set counts by the clock as it stands now; each setting once, whoever noticed it.
  const { facts: moved, steps } = inOneFrame(facts, clockReading(clock));
  const last = moved.reduce((latest, { told }) => Math.max(latest, told), -Infinity);
  if (last > now + leeway)
    findings.push(
      wrong(
        `The clock shows ${tell(now)}, but something was told ${tell(last)} already.`,
        "Set the machine's clock. What runs keeps its length once a screen has seen it set.",
      ),
    );
  const latest = steps.at(-1);
  if (latest !== undefined)
    findings.push(
      note(
        `The clock was set ${steps.length === 1 ? 'once' : `${steps.length} times`}, the last time ${tell(latest.at)}. What ran kept its length.`,
      ),
    );
  if (zone === 'auto' && machineZone === undefined)
    findings.push(
      wrong("The machine's zone is not known.", 'Name it: recoat settings zone Europe/Lisbon'),
    );
  if (clock.uptime() === null || clock.bootId === null)
    findings.push(
      note(
        "This machine doesn't say how long it runs, or since which start: a clock that is set can't always be told from time gone by.",
      ),
    );
  if (findings.some(({ state }) => state === 'wrong')) return findings;
  const where = zone === 'auto' ? `${machineZone ?? ''}, the machine's own` : zone;
  return [fine(`The clock shows ${tell(now)}; the zone is ${where}.`), ...findings];
}
