import { describe, expect, it } from 'vitest';
import { createClockWatch } from '../../src/shell/clock-watch.ts';
import { hour, minute, second } from '../../src/tracker/time/index.ts';
import { startOfTests, steppedClock } from './support/stepped-clock.ts';

describe('noticing that the clock was set', () => {
  it('says by how much, once, in both directions', () => {
    const clock = steppedClock(startOfTests);
    const watch = createClockWatch(clock);
    clock.pass(5 * minute);
    expect(watch.look()).toBeNull();
    clock.set(hour);
    expect(watch.look()).toBe(hour);
    expect(watch.look()).toBeNull();
    clock.set(-2 * hour);
    expect(watch.look()).toBe(-2 * hour);
  });

  it('leaves out the small corrections that every machine makes', () => {
    const clock = steppedClock(startOfTests);
    const watch = createClockWatch(clock);
    clock.set(second);
    expect(watch.look()).toBeNull();
  });

  it('says nothing where the machine tells no time of its own', () => {
    const watch = createClockWatch({ ...steppedClock(startOfTests), uptime: () => null });
    expect(watch.look()).toBeNull();
  });
});
