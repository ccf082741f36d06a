import { describe, expect, it } from 'vitest';
import { clockReading } from '../../src/shell/clock.ts';
import { createClockWatch } from '../../src/shell/clock-watch.ts';
import { hour, minute, second } from '../../src/tracker/time/index.ts';
import { note } from '../persist/facts.ts';
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

  it('goes by the last that was told since the machine started, so that no setting is noticed twice', () => {
    const clock = steppedClock(startOfTests);
    const told = (id: string) => ({ ...note(id), ...clockReading(clock) });
    const earlier = { ...note('earlier'), bootId: 'another boot', uptimeMs: 9_000_000 };
    const first = told('first');
    clock.pass(minute);
    clock.set(hour);
    const facts = [earlier, first, told('last')];
    clock.pass(minute);
    expect(createClockWatch(clock, facts).look()).toBeNull();
    clock.set(hour);
    expect(createClockWatch(clock, facts).look()).toBe(hour);
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

describe('reading the clock', () => {
  it('gives two times that belong together, also where the machine sleeps in the middle', () => {
    const clock = steppedClock(startOfTests);
    const { told, uptimeMs } = clockReading(clock);
    let sleeps = true;
    const asleep = clockReading({
      ...clock,
      uptime: () => {
        if (sleeps) clock.pass(8 * hour);
        sleeps = false;
        return clock.uptime();
      },
    });
    expect(asleep.told - (asleep.uptimeMs ?? 0)).toBe(told - (uptimeMs ?? 0));
  });
});
