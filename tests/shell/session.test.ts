import { noRules } from '../../src/tracker/trade/index.ts';
import { describe, expect, it } from 'vitest';
import { memoryStore, type FactStore, type Loaded } from '../../src/persist/index.ts';
import { movePastPieces } from '../../src/shell/move-past.ts';
import { createSession } from '../../src/shell/session.ts';
import { day, hour, minute } from '../../src/tracker/time/index.ts';
import { smallSchedule } from './support/small-schedule.ts';
import { startOfTests, steppedClock } from './support/stepped-clock.ts';

const addStool = { do: 'add piece', name: 'Stool', schedule: smallSchedule } as const;

function openSession(store: FactStore = memoryStore()) {
  const clock = steppedClock(startOfTests);
  const waiting: (() => void)[] = [];
  let ids = 0;
  let opened: FactStore | null = store;
  const loaded = mustLoad(store);
  const session = createSession({
    rules: noRules,
    loaded,
    notices: [],
    folder: null,
    store: () => opened,
    clock,
    newId: () => `g${++ids}`,
    here: { zone: 'America/New_York', locale: 'en-GB' },
    soon: (work) => waiting.push(work),
  });
  return {
    session,
    clock,
    store,
    /** What a frame's end does. */
    writeOut: () => waiting.splice(0).forEach((work) => work()),
    withoutStore: () => (opened = null),
    withStore: () => (opened = store),
  };
}

function mustLoad(store: FactStore): Loaded {
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  return loaded.value;
}

const factsIn = (store: FactStore): readonly string[] =>
  mustLoad(store).bench.map(({ kind }) => kind);

describe('a session', () => {
  it('shows what was pressed at once, marked until it is on the disk', () => {
    const { session, store, writeOut } = openSession();
    const reply = session.act(addStool);
    expect(reply).toMatchObject({ ok: true, says: '1 Stool on the bench' });
    const [piece] = [...session.snapshot().bench.pieces.values()];
    expect(piece?.name).toBe('Stool');
    expect(session.snapshot().unwritten.has(piece?.id ?? '')).toBe(true);
    expect(factsIn(store)).toEqual([]);
    writeOut();
    expect(session.snapshot().unwritten.size).toBe(0);
    expect(factsIn(store)).toEqual(['piece-added']);
  });

  it('answers a refusal in words and stores nothing', () => {
    const { session, store, writeOut } = openSession();
    expect(session.act({ do: 'put down' })).toMatchObject({
      ok: false,
      says: 'Not put down: nothing is in hand.',
    });
    writeOut();
    expect(factsIn(store)).toEqual([]);
  });

  it('keeps what was pressed before the store could be opened, and writes it then', () => {
    const { session, store, writeOut, withoutStore, withStore } = openSession();
    withoutStore();
    session.act(addStool);
    writeOut();
    expect(session.snapshot().unwritten.size).toBe(1);
    expect(factsIn(store)).toEqual([]);
    withStore();
    session.flush();
    expect(factsIn(store)).toEqual(['piece-added']);
    expect(session.snapshot().unwritten.size).toBe(0);
  });

  it('decides anew on what another process has written meanwhile', () => {
    const store = memoryStore();
    const first = openSession(store);
    first.session.act(addStool);
    first.writeOut();
    const second = openSession(store);
    const piece = [...second.session.snapshot().bench.pieces.keys()][0] ?? '';
    first.clock.pass(minute);
    first.session.act({ do: 'pick up', targets: [{ piece, part: null }] });
    first.writeOut();
    second.clock.pass(2 * minute);
    // The second screen has not heard of the pick-up yet.
    expect(second.session.act({ do: 'pick up', targets: [{ piece, part: null }] }).ok).toBe(true);
    second.writeOut();
    expect(factsIn(store).filter((kind) => kind === 'picked-up')).toHaveLength(1);
    expect(second.session.snapshot().notices.join()).toContain('in hand already');
  });

  it('undoes and says what could not be written, and writes it when it is pressed again', () => {
    const store = memoryStore();
    let isFull = true;
    const failing: FactStore = {
      ...store,
      change: (decide) =>
        isFull
          ? {
              ok: false,
              problem: {
                kind: 'full',
                file: 'bench.json',
                says: 'Not recorded: disk full.',
                todo: 'Free 1 MB.',
              },
            }
          : store.change(decide),
    };
    const { session, writeOut } = openSession(failing);
    session.act(addStool);
    writeOut();
    expect(session.snapshot().obstacle).toEqual({
      says: 'Not recorded: disk full.',
      todo: 'Free 1 MB.',
    });
    expect(session.snapshot().bench.pieces.size).toBe(0);
    isFull = false;
    session.act(addStool);
    writeOut();
    expect(session.snapshot().obstacle).toBeNull();
    expect(factsIn(store)).toEqual(['piece-added']);
  });

  it('keeps the air as last read with what is put on', () => {
    const { session, store, clock, writeOut } = openSession();
    session.takeReading({ tempC: 18, rh: 55 });
    clock.pass(10 * minute);
    session.act(addStool);
    const piece = [...session.snapshot().bench.pieces.keys()][0] ?? '';
    session.act({ do: 'done', piece, part: null });
    session.act({ do: 'first stroke', piece, part: null });
    writeOut();
    const stamped = mustLoad(store).bench.find(({ kind }) => kind === 'stamped');
    expect(stamped?.body).toMatchObject({
      agent: 'A',
      air: { tempC: 18, rh: 55, readAt: startOfTests },
    });
  });

  it('works windows out anew when a reading comes in or the air is to count no more, and only then', () => {
    const { session, store, writeOut } = openSession();
    const before = session.snapshot().sense;
    session.act(addStool);
    writeOut();
    expect(session.snapshot().sense).toBe(before);
    session.takeReading({ tempC: 13, rh: 50 });
    const { sense } = session.snapshot();
    expect(sense).not.toBe(before);
    const span = {
      ms: hour,
      chemistry: 'oxidative',
      statedFor: { tempC: 23, rh: 50 },
      may: 'grow',
    } as const;
    expect(sense.spanEnd(span, startOfTests)).toBe(startOfTests + 2 * hour);
    store.changeSettings((current) => ({ settings: { ...current, air: false }, result: null }));
    session.reload();
    expect(session.snapshot().sense.spanEnd(span, startOfTests)).toBe(startOfTests + hour);
  });

  it('puts back a piece that lies in the history, with its whole record', () => {
    const store = memoryStore();
    const { session, clock, writeOut } = openSession(store);
    session.act(addStool);
    const piece = [...session.snapshot().bench.pieces.keys()][0] ?? '';
    session.act({ do: 'done', piece, part: null });
    session.act({ do: 'take off bench', piece });
    writeOut();
    clock.pass(day);
    movePastPieces(store, 'America/New_York', clock.now());
    session.reload();
    expect(session.snapshot().bench.pieces.has(piece)).toBe(false);
    expect(session.act({ do: 'put back on bench', piece })).toMatchObject({ ok: true });
    writeOut();
    const back = session.snapshot().bench.pieces.get(piece);
    expect(back?.place).toBe('bench');
    expect(back?.finishes).toHaveLength(1);
  });

  it('stops a loud ping here even where that can not be written', () => {
    const store = memoryStore();
    const head = {
      group: 'c',
      at: startOfTests,
      told: startOfTests,
      by: 'clock',
      uptimeMs: null,
      bootId: null,
    } as const;
    const body = { pings: ['w/c/opens 1'], text: '1 Stool: B on.', loud: true, piece: null };
    store.change(() => ({
      append: { pings: [{ ...head, id: 'c.1', kind: 'ping-claimed', body }] },
      result: null,
    }));
    const problem = {
      kind: 'full',
      file: 'pings.json',
      says: 'Not recorded: disk full.',
      todo: 'Free 1 MB.',
    } as const;
    const { session } = openSession({ ...store, change: () => ({ ok: false, problem }) });
    expect(session.snapshot().pings[0]?.seenAt).toBeNull();
    session.acknowledge(['c.1']);
    expect(session.snapshot().pings[0]?.seenAt).toBe(startOfTests);
    session.reload();
    expect(session.snapshot().pings[0]?.seenAt).toBe(startOfTests);
    expect(session.snapshot().obstacle?.says).toBe('Not recorded: disk full.');
  });

  it('takes back what a hand did, not what the clock told meanwhile', () => {
    const { session, clock, writeOut } = openSession();
    session.act(addStool);
    clock.set(-60 * minute);
    session.act({ do: 'note clock step', byMs: -60 * minute });
    writeOut();
    expect(session.snapshot().bench.clockSteps).toHaveLength(1);
    session.act({ do: 'take back' });
    clock.set(60 * minute);
    session.act({ do: 'note clock step', byMs: 60 * minute });
    writeOut();
    expect(session.snapshot().bench.pieces.size).toBe(0);
    expect(session.snapshot().bench.clockSteps).toHaveLength(2);
    expect(session.act({ do: 'bring back' })).toMatchObject({ ok: true });
    expect(session.snapshot().bench.pieces.size).toBe(1);
  });

  it('takes back a removal after a restart', () => {
    const store = memoryStore();
    const { session, clock, writeOut } = openSession(store);
    session.act(addStool);
    const piece = [...session.snapshot().bench.pieces.keys()][0] ?? '';
    session.act({ do: 'remove piece', piece });
    writeOut();
    clock.pass(10 * minute);
    movePastPieces(store, 'America/New_York', clock.now());
    const again = openSession(store);
    expect(again.session.snapshot().bench.pieces.get(piece)?.place).toBe('removed');
    expect(again.session.act({ do: 'take back' })).toMatchObject({ ok: true });
    expect(again.session.snapshot().bench.pieces.get(piece)?.place).toBe('bench');
  });

  it('refuses keys once the store can not be opened for writing; earlier ones stay marked', () => {
    const { session, withoutStore, writeOut } = openSession();
    withoutStore();
    session.act(addStool);
    session.obstruct({ says: 'Not opened: read-only.', todo: 'Choose another folder.' });
    expect(session.act(addStool)).toMatchObject({
      ok: false,
      says: 'Not opened: read-only. Choose another folder.',
    });
    writeOut();
    expect(session.snapshot().bench.pieces.size).toBe(1);
    expect(session.snapshot().unwritten.size).toBe(1);
  });
});
