import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createTicker } from '../../src/shell/ticker.ts';
import { minute, second } from '../../src/tracker/time/index.ts';

const start = Date.UTC(2026, 10, 24, 19, 0, 20, 400);
const clock = { now: () => Date.now(), uptime: () => null, bootId: null };

beforeEach(() => {
  vi.useFakeTimers();
  vi.setSystemTime(start);
});
afterEach(() => {
  vi.useRealTimers();
});

describe('the ticker', () => {
  it('ticks on the minute while nothing shows seconds', () => {
    const ticker = createTicker(clock);
    const at: number[] = [];
    ticker.subscribe(() => at.push(ticker.now()));
    vi.advanceTimersByTime(2 * minute);
    expect(at.map((instant) => Math.floor((instant % minute) / second))).toEqual([0, 0]);
    expect(at[0]).toBeGreaterThan(start + 39 * second);
    ticker.stop();
  });

  it('ticks on each second once a figure shows seconds', () => {
    const ticker = createTicker(clock);
    const ticks = vi.fn();
    ticker.subscribe(ticks);
    ticker.pace(second);
    vi.advanceTimersByTime(10 * second);
    expect(ticks).toHaveBeenCalledTimes(10);
    ticker.stop();
  });

  it('wakes at the instant at which something is due', () => {
    const ticker = createTicker(clock);
    const at: number[] = [];
    ticker.subscribe(() => at.push(ticker.now()));
    ticker.wakeAt(start + 7 * second);
    vi.advanceTimersByTime(8 * second);
    expect(at).toHaveLength(1);
    expect((at[0] ?? 0) - (start + 7 * second)).toBeLessThan(50);
    ticker.stop();
  });

  it('notices within 15 seconds that the machine slept past an edge', () => {
    const ticker = createTicker(clock);
    const ticks = vi.fn();
    ticker.subscribe(ticks);
    ticker.wakeAt(start + 600 * second);
    vi.setSystemTime(start + 700 * second);
    vi.advanceTimersByTime(16 * second);
    expect(ticks).toHaveBeenCalled();
    ticker.stop();
  });

  it('keeps no timer once nobody listens', () => {
    const ticker = createTicker(clock);
    const stop = ticker.subscribe(() => undefined);
    expect(vi.getTimerCount()).toBe(1);
    stop();
    expect(vi.getTimerCount()).toBe(0);
  });
});
