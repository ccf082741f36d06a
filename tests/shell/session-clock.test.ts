import { describe, expect, it } from 'vitest';
import { memoryStore, type FactStore } from '../../src/persist/index.ts';
import { createSession } from '../../src/shell/session.ts';
import { foldBench } from '../../src/tracker/bench/index.ts';
import { hour, minute, second } from '../../src/tracker/time/index.ts';
import { noRules } from '../../src/tracker/trade/index.ts';
import { smallSchedule } from './support/small-schedule.ts';
import { startOfTests, steppedClock } from './support/stepped-clock.ts';

const clockOf = () => steppedClock(startOfTests);

function openSession(store: FactStore, clock: ReturnType<typeof clockOf>, name: string) {
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  const waiting: (() => void)[] = [];
  let ids = 0;
  const session = createSession({
    rules: noRules,
    loaded: loaded.value,
    notices: [],
    folder: null,
    store: () => store,
    clock,
    newId: () => `${name}${++ids}`,
    here: { zone: 'America/New_York', locale: 'en-GB' },
    soon: (work) => waiting.push(work),
  });
  return { ...session, writeOut: () => waiting.splice(0).forEach((work) => work()) };
}

/** A stool that was picked up a moment ago. */
function stoolInHand() {
  const clock = clockOf();
  const store = memoryStore();
  const first = openSession(store, clock, 'a');
  first.act({ do: 'add piece', name: 'Stool', schedule: smallSchedule });
  first.writeOut();
  const [piece = ''] = first.snapshot().bench.pieces.keys();
  first.act({ do: 'pick up', targets: [{ piece, part: null }] });
  first.writeOut();
  const bench = () => {
    const loaded = store.load();
    return foldBench(loaded.ok ? loaded.value.bench : []);
  };
  return { clock, store, first, piece, bench };
}

describe('a key and its writing', () => {
  it('belong to the instant of the key, also where the machine slept between and another wrote first', () => {
    const { clock, store, first, piece, bench } = stoolInHand();
    const began = clock.now();
    clock.pass(20 * minute);
    const second = openSession(store, clock, 'b');
    first.act({ do: 'put down' });
    second.act({ do: 'write note', piece, step: null, text: 'wobbles' });
    second.writeOut();
    clock.pass(3 * hour);
    first.writeOut();
    expect(bench().clockSteps).toEqual([]);
    expect(bench().sessions).toMatchObject([{ start: began, end: began + 20 * minute }]);
  });
});

describe('a key that is decided anew', () => {
  it.each([-25 * hour, 25 * hour])(
    'moves what it moved from where that really is, where the clock was set by %i ms meanwhile',
    (by) => {
      const { clock, store, first, piece, bench } = stoolInHand();
      clock.pass(20 * minute);
      const second = openSession(store, clock, 'b');
      first.act({ do: 'move stamp', piece, earlier: false });
      clock.set(by);
      second.act({ do: 'write note', piece, step: null, text: 'wobbles' });
      second.writeOut();
      first.writeOut();
      expect(bench().sessions).toMatchObject([{ start: clock.now() - 19 * minute, end: null }]);
    },
  );
});

describe('a key just after the clock was set, before anybody has noticed', () => {
  it.each([-25 * hour, -30 * minute, -3 * second, 3 * second, 30 * minute, 25 * hour])(
    'by %i ms counts the minutes that went by',
    (by) => {
      const { clock, first, bench } = stoolInHand();
      clock.pass(20 * minute);
      clock.set(by);
      expect(first.act({ do: 'put down' })).toMatchObject({ ok: true });
      first.writeOut();
      expect(bench().sessions).toMatchObject([
        { start: clock.now() - 20 * minute, end: clock.now() },
      ]);
    },
  );

  it.each([-25 * hour, -30 * minute, 30 * minute, 25 * hour])(
    'by %i ms moves what is moved from where it really is',
    (by) => {
      const { clock, first, piece, bench } = stoolInHand();
      clock.pass(20 * minute);
      clock.set(by);
      expect(first.act({ do: 'move stamp', piece, earlier: false })).toMatchObject({ ok: true });
      first.writeOut();
      expect(bench().sessions).toMatchObject([{ start: clock.now() - 19 * minute, end: null }]);
    },
  );
});
