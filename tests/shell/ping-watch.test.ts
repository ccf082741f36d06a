import { noRules } from '../../src/tracker/trade/index.ts';
import { foldBench, type PingSense } from '../../src/tracker/bench/index.ts';
import { describe, expect, it } from 'vitest';
import { memoryStore, type FactStore } from '../../src/persist/index.ts';
import { createPingWatch } from '../../src/shell/ping/ping-watch.ts';
import { ringAgainAfter } from '../../src/shell/ping/ringing.ts';
import type { Ping } from '../../src/shell/ping/pinger.ts';
import { createSession } from '../../src/shell/session.ts';
import { senseOf } from '../../src/shell/shop.ts';
import { senderLostAfter } from '../../src/shell/ping/lost-claims.ts';
import { shownPings } from '../../src/shell/shown-pings.ts';
import { hour, minute, second } from '../../src/tracker/time/index.ts';
import type { Shop } from '../../src/views/port.ts';
import { smallSchedule } from './support/small-schedule.ts';
import { startOfTests, steppedClock } from './support/stepped-clock.ts';

const shop: Shop = { zone: 'America/New_York', hours: '24', temperature: 'C', lengths: 'mm' };

const sense = senseOf(shop);

/** A bench on which A has just gone on a stool, and what watches its windows. */
function benchWithDwell(store: FactStore = memoryStore()) {
  const clock = steppedClock(startOfTests);
  let ids = 0;
  const newId = (): string => `id${clock.now()}-${++ids}`;
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  const session = createSession({
    rules: noRules,
    loaded: loaded.value,
    notices: [],
    folder: null,
    store: () => store,
    clock,
    newId,
    here: { zone: shop.zone, locale: '' },
    soon: (work) => work(),
  });
  const knownFrom = (watched: FactStore) => () => {
    const now = watched.load();
    if (!now.ok) throw new Error(now.problem.says);
    return {
      bench: foldBench(now.value.bench),
      pings: now.value.pings,
      shown: shownPings(now.value.pings),
    };
  };
  const watch = (
    watched = store,
    answer: 'bell' | 'no way' | 'never answers' = 'bell',
    known = knownFrom(watched),
    told: { readonly keepAwake?: boolean; readonly sense?: () => PingSense } = {},
  ) => {
    const sent: Ping[] = [];
    const wanted: (string | null)[] = [];
    const made = createPingWatch({
      store: watched,
      clock,
      newId,
      pinger: {
        send: (ping) => {
          sent.push(ping);
          return answer === 'never answers'
            ? new Promise(() => undefined)
            : Promise.resolve({ ways: answer === 'bell' ? ['bell'] : [], failures: [] });
        },
        warmUp: () => Promise.resolve(),
      },
      awake: {
        want: (reason) => wanted.push(reason),
        state: () => ({ wanted: false, kept: false, why: '' }),
      },
      keepAwake: () => told.keepAwake ?? true,
      diagnostics: { record: () => undefined, missed: () => 0 },
      shop: () => shop,
      sense: told.sense ?? (() => sense),
      since: startOfTests,
      recorded: session.reload,
      onScreen: answer !== 'no way',
      known,
    });
    return { ...made, sent, wanted };
  };
  session.act({ do: 'add piece', name: 'Stool', schedule: smallSchedule });
  const piece = [...session.snapshot().bench.pieces.keys()][0] ?? '';
  session.act({ do: 'done', piece, part: null });
  session.act({ do: 'first stroke', piece, part: null });
  return { clock, store, session, piece, watch };
}

/** Lets the answers of the pinger come in. */
const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('watching windows', () => {
  it('pings three minutes and one minute before a dwell ends, at its end, and before it spoils', async () => {
    const { clock, watch } = benchWithDwell();
    const watcher = watch();
    const times: { readonly after: number; readonly loud: boolean }[] = [];
    for (let after = 0; after <= 10 * minute; after += 10 * second) {
      const before = watcher.sent.length;
      watcher.look();
      for (const ping of watcher.sent.slice(before)) {
        if (ping.repeat !== true) times.push({ after: after / minute, loud: ping.loud });
      }
      await settle();
      clock.pass(10 * second);
    }
    expect(times).toEqual([
      { after: 2, loud: false },
      { after: 4, loud: false },
      { after: 5, loud: true },
      { after: 9, loud: true },
      { after: 10, loud: true },
    ]);
  });

  it('answers when to look again: at the next ping, and no earlier', () => {
    const { clock, watch } = benchWithDwell();
    const watcher = watch();
    expect(watcher.look()).toBe(clock.now() + 2 * minute);
  });

  it('sends each ping once, whoever else is watching, also after a restart', async () => {
    const { clock, watch } = benchWithDwell();
    const [first, other] = [watch(), watch()];
    clock.pass(5 * minute);
    first.look();
    other.look();
    await settle();
    const restarted = watch();
    restarted.look();
    expect(first.sent).toHaveLength(1);
    expect(other.sent).toHaveLength(0);
    expect(restarted.sent).toHaveLength(0);
  });

  it('rings again for a loud ping until a key takes note of it', async () => {
    const { clock, session, watch } = benchWithDwell();
    const watcher = watch();
    clock.pass(5 * minute);
    watcher.look();
    await settle();
    clock.pass(ringAgainAfter);
    watcher.look();
    expect(watcher.sent.map(({ repeat }) => repeat === true)).toEqual([false, true]);
    session.reload();
    const loud = session.snapshot().pings.at(-1);
    expect(loud?.loud).toBe(true);
    session.acknowledge([loud?.claim ?? '']);
    clock.pass(ringAgainAfter);
    watcher.look();
    expect(watcher.sent).toHaveLength(2);
  });

  it('rings again so long after a loud ping went out, not after it waited to be claimed', () => {
    const { clock, store, watch } = benchWithDwell();
    const waited: FactStore = {
      ...store,
      change: (decide) => {
        const done = store.change(decide);
        clock.pass(15 * second);
        return done;
      },
    };
    const watcher = watch(waited, 'never answers');
    clock.pass(5 * minute);
    watcher.look();
    clock.pass(ringAgainAfter - second);
    watcher.look();
    expect(watcher.sent).toHaveLength(1);
    clock.pass(second);
    watcher.look();
    expect(watcher.sent.map(({ repeat }) => repeat === true)).toEqual([false, true]);
  });

  it('tells in one summary what was missed while nothing ran', () => {
    const { clock, watch } = benchWithDwell();
    clock.pass(2 * hour);
    const watcher = watch();
    watcher.look();
    expect(watcher.sent).toHaveLength(1);
    expect(watcher.sent[0]?.title + (watcher.sent[0]?.body ?? '')).toContain('Stool');
  });

  it('shows a ping as soon as it is claimed', () => {
    const { clock, session, watch } = benchWithDwell();
    const watcher = watch();
    clock.pass(5 * minute);
    watcher.look();
    expect(session.snapshot().pings.at(-1)).toMatchObject({ loud: true, seenAt: null });
  });

  it('sends nothing for a window that was closed in time', () => {
    const { clock, session, piece, watch } = benchWithDwell();
    clock.pass(90 * second);
    session.act({ do: 'first stroke', piece, part: null });
    clock.pass(hour);
    const watcher = watch();
    watcher.look();
    expect(watcher.sent).toEqual([]);
  });

  it('sends nothing for a window that another process closed, though it has not heard of it yet', async () => {
    const { clock, store, session, piece, watch } = benchWithDwell();
    const before = store.load();
    if (!before.ok) throw new Error(before.problem.says);
    const known = { bench: foldBench(before.value.bench), pings: [], shown: [] };
    const watcher = watch(store, 'bell', () => known);
    session.act({ do: 'first stroke', piece, part: null });
    clock.pass(5 * minute);
    watcher.look();
    await settle();
    expect(watcher.sent).toEqual([]);
  });

  it('does not take its own ping for lost while its answer is still to come', () => {
    const { clock, watch } = benchWithDwell();
    const slow = watch(undefined, 'never answers');
    clock.pass(5 * minute);
    for (let looks = 0; looks < 4; looks++) {
      slow.look();
      clock.pass(senderLostAfter / 2);
    }
    expect(slow.sent.filter(({ repeat }) => repeat !== true)).toHaveLength(1);
  });

  it('wants the machine awake while the dwell can spoil, and no longer', () => {
    const { clock, session, piece, watch } = benchWithDwell();
    const watcher = watch();
    watcher.look();
    expect(watcher.wanted.at(-1)).toBe('Stool, B on');
    clock.pass(minute);
    session.act({ do: 'first stroke', piece, part: null });
    watcher.look();
    expect(watcher.wanted.at(-1)).toBeNull();
  });

  it('lets the machine sleep where the user has chosen that', () => {
    const watcher = benchWithDwell().watch(undefined, 'bell', undefined, { keepAwake: false });
    watcher.look();
    expect(watcher.spoils()).toBe(true);
    expect(watcher.wanted.at(-1)).toBeNull();
  });

  it('looks anew at once where the air or a setting has moved what is to come', () => {
    const { clock, store, watch } = benchWithDwell();
    const loaded = store.load();
    if (!loaded.ok) throw new Error(loaded.problem.says);
    // Nothing else has changed since the look before.
    const known = { bench: foldBench(loaded.value.bench), pings: loaded.value.pings, shown: [] };
    const inTwoMinutes = clock.now() + 2 * minute;
    const hot: PingSense = {
      ...sense,
      spanEnd: (span, from) => sense.spanEnd(span, from) - 30 * second,
    };
    let now = sense;
    const watcher = watch(store, 'bell', () => known, { sense: () => now });
    expect(watcher.look()).toBe(inTwoMinutes);
    now = hot;
    expect(watcher.look()).toBe(inTwoMinutes - 30 * second);
  });

  it('records by which ways a ping went out', async () => {
    const { clock, session, watch } = benchWithDwell();
    const watcher = watch();
    clock.pass(2 * minute);
    watcher.look();
    await settle();
    session.reload();
    expect(session.snapshot().pings.at(-1)?.ways).toEqual(['screen', 'bell']);
  });

  it('pings once all the same where the store can not be written, and puts that on record once it can', async () => {
    const store = memoryStore();
    const { clock, session, watch } = benchWithDwell(store);
    let isFull = true;
    const full: FactStore = {
      ...store,
      change: (decide) => {
        if (!isFull) return store.change(decide);
        const loaded = store.load();
        if (loaded.ok) decide(loaded.value);
        return {
          ok: false,
          problem: {
            kind: 'full',
            file: 'pings.json',
            says: 'Not recorded: disk full.',
            todo: 'Free 1 MB.',
          },
        };
      },
    };
    const watcher = watch(full);
    clock.pass(5 * minute);
    watcher.look();
    await settle();
    watcher.look();
    expect(watcher.sent.map(({ body }) => body)).toEqual([
      expect.stringMatching(/Not on record: perhaps told twice\.$/),
    ]);
    isFull = false;
    clock.pass(30 * second);
    watcher.look();
    const loaded = store.load();
    const pings = loaded.ok ? loaded.value.pings : [];
    expect(pings.map(({ kind }) => kind)).toEqual(['ping-claimed', 'ping-sent']);
    expect(session.snapshot().pings.map(({ text }) => text)).toEqual([
      expect.stringMatching(/B on, by/),
    ]);
    const other = watch();
    other.look();
    expect([...watcher.sent.slice(1), ...other.sent].map(({ repeat }) => repeat)).toEqual([
      true,
      true,
    ]);
  });

  it('leaves a ping to others where it stood still with the claim in its hands', async () => {
    const { clock, store, watch } = benchWithDwell();
    const stopped = watch({
      ...store,
      change: (decide) => {
        const claimed = store.change(decide);
        clock.pass(hour);
        return claimed;
      },
    });
    const other = watch();
    clock.pass(5 * minute);
    stopped.look();
    other.look();
    await settle();
    stopped.look();
    expect(stopped.sent).toEqual([]);
    expect(other.sent.map(({ body }) => body)).toEqual([
      expect.stringMatching(/Perhaps told before\.$/),
    ]);
  });

  it('pings once all the same where the store can not even be locked', () => {
    const store = memoryStore();
    const { clock, watch } = benchWithDwell(store);
    const locked: FactStore = {
      ...store,
      change: () => ({
        ok: false,
        problem: {
          kind: 'unwritable',
          file: 'lock.sqlite',
          says: 'Not stored: it can not be locked.',
          todo: 'Check its rights.',
        },
      }),
    };
    const watcher = watch(locked);
    clock.pass(2 * minute);
    watcher.look();
    watcher.look();
    expect(watcher.sent).toHaveLength(1);
  });

  it('tells again what was claimed and never sent, and says that it may have been told before', async () => {
    const { clock, watch } = benchWithDwell();
    const [died, other] = [watch(undefined, 'never answers'), watch()];
    clock.pass(5 * minute);
    died.look();
    other.look();
    await settle();
    expect([died.sent, other.sent].map(({ length }) => length)).toEqual([1, 0]);
    clock.pass(senderLostAfter);
    other.look();
    await settle();
    expect(
      other.sent.map(({ loud, body }) => [loud, body.endsWith('Perhaps told before.')]),
    ).toEqual([[true, true]]);
    clock.pass(senderLostAfter);
    watch().look();
    expect(other.sent).toHaveLength(1);
  });

  it('gives a claim that was made before the machine slept its half minute after that', async () => {
    const { clock, watch } = benchWithDwell();
    const [slow, other] = [watch(undefined, 'never answers'), watch()];
    clock.pass(5 * minute);
    slow.look();
    other.look();
    await settle();
    clock.pass(2 * minute);
    const before = other.sent.length;
    other.look();
    expect(other.sent.slice(before).filter(({ body }) => body.includes('Perhaps'))).toEqual([]);
    clock.pass(senderLostAfter);
    other.look();
    expect(other.sent.slice(before).filter(({ body }) => body.includes('Perhaps'))).toHaveLength(1);
  });

  it('tells again what left another process by no way at all', async () => {
    const { clock, watch } = benchWithDwell();
    const [voiceless, other] = [watch(undefined, 'no way'), watch()];
    clock.pass(5 * minute);
    voiceless.look();
    await settle();
    other.look();
    expect(other.sent.filter(({ repeat }) => repeat !== true)).toEqual([]);
    clock.pass(senderLostAfter);
    other.look();
    await settle();
    expect(other.sent.filter(({ body }) => body.endsWith('Perhaps told before.'))).toHaveLength(1);
  });

  it('rings on for what another process sent, as that may be gone', async () => {
    const { clock, watch } = benchWithDwell();
    const [gone, other] = [watch(), watch()];
    clock.pass(5 * minute);
    gone.look();
    await settle();
    clock.pass(10 * second);
    other.look();
    expect(other.sent).toEqual([]);
    clock.pass(10 * second);
    other.look();
    expect(other.sent.map(({ repeat }) => repeat)).toEqual([true]);
  });

  it('does not tell again what a later ping of the same window has overtaken', async () => {
    const { clock, watch } = benchWithDwell();
    const [died, other] = [watch(undefined, 'never answers'), watch()];
    clock.pass(4 * minute - second);
    died.look();
    clock.pass(second);
    other.look();
    await settle();
    clock.pass(senderLostAfter);
    other.look();
    expect(died.sent).toHaveLength(1);
    expect(other.sent.filter(({ body }) => body.includes('Perhaps'))).toEqual([]);
  });

  it('goes on ringing after the clock was set back', async () => {
    const { clock, watch } = benchWithDwell();
    const watcher = watch();
    clock.pass(9 * minute);
    watcher.look();
    await settle();
    clock.set(-3 * minute);
    watcher.look();
    expect(watcher.sent.map(({ repeat }) => repeat === true)).toEqual([false, true]);
  });

  it('stops ringing for what was seen to from elsewhere, while something else can spoil', async () => {
    const { clock, session, piece, watch } = benchWithDwell();
    const watcher = watch();
    clock.pass(5 * minute);
    watcher.look();
    await settle();
    session.act({ do: 'first stroke', piece, part: null });
    session.act({ do: 'add piece', name: 'Box', schedule: smallSchedule });
    const box = [...session.snapshot().bench.pieces.keys()].find((id) => id !== piece) ?? '';
    session.act({ do: 'done', piece: box, part: null });
    session.act({ do: 'first stroke', piece: box, part: null });
    clock.pass(ringAgainAfter);
    watcher.look();
    expect(watcher.wanted.at(-1)).toBe('Box, B on');
    expect(watcher.sent).toHaveLength(1);
  });

  it('works nothing out anew while nothing has changed and nothing is due', () => {
    const { clock, store, watch } = benchWithDwell();
    const now = store.load();
    if (!now.ok) throw new Error(now.problem.says);
    const known = { bench: foldBench(now.value.bench), pings: now.value.pings, shown: [] };
    const watcher = watch(store, 'bell', () => known);
    watcher.look();
    const asked = watcher.wanted.length;
    clock.pass(second);
    watcher.look();
    expect(watcher.wanted).toHaveLength(asked);
    clock.pass(minute);
    watcher.look();
    expect(watcher.wanted).toHaveLength(asked + 1);
    // After the clock was set back nothing of that is known to be true.
    clock.set(-10 * second);
    watcher.look();
    expect(watcher.wanted).toHaveLength(asked + 2);
    clock.set(10 * second);
    clock.pass(minute);
    watcher.look();
    expect(watcher.sent).toHaveLength(1);
  });
});
