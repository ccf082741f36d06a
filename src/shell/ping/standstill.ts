import { second, type Instant, type Milliseconds } from '../../tracker/time/index.ts';

/** A look that comes later than this after it was to come: the machine slept, or this process was stopped. */
const stoodStillFor: Milliseconds = 15 * second;

/** What the looks of a process tell of the times at which it stood still. */
export type Standstill = {
  /** A look begins. */
  readonly looks: (now: Instant) => void;
  /** A look ended, and the next is to come at `nextAt` at the latest. */
  readonly looked: (now: Instant, nextAt: Instant) => void;
  /** When it last went on after it had stood still; null while it never did. */
  readonly wokeAt: () => Instant | null;
  /** When it was last there, for what is told of while it comes to; undefined where this look came in time. */
  readonly asleepFrom: () => Instant | undefined;
};

export function createStandstill(): Standstill {
  let wokeAt: Instant | null = null;
  let asleepFrom: Instant | undefined;
  let seenAt: Instant | undefined;
  let dueAt: Instant = Number.POSITIVE_INFINITY;
  return {
    looks: (now) => {
      const hasStoodStill = now - dueAt > stoodStillFor;
      if (hasStoodStill) wokeAt = now;
      asleepFrom = hasStoodStill ? seenAt : undefined;
    },
    looked: (now, nextAt) => {
      dueAt = nextAt;
      seenAt = now;
    },
    wokeAt: () => wokeAt,
    asleepFrom: () => asleepFrom,
  };
}
