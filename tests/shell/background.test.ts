import { noRules } from '../../src/tracker/trade/index.ts';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { memoryStore, openForWriting, type FactStore } from '../../src/persist/index.ts';
import { startBackground } from '../../src/shell/background.ts';
import { createSession } from '../../src/shell/session.ts';
import { createTicker } from '../../src/shell/ticker.ts';
import type { World } from '../../src/shell/world.ts';
import { hour, minute, second } from '../../src/tracker/time/index.ts';
import { pieceAdded } from '../persist/facts.ts';
import { smallSchedule } from './support/small-schedule.ts';
import { startOfTests, steppedClock } from './support/stepped-clock.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'recoat-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true });
});

/** Lets everything run that was put off until the frame is out, and what that puts off in turn. */
const settle = async (): Promise<void> => {
  for (let turn = 0; turn < 20; turn++) await new Promise((resolve) => setImmediate(resolve));
};

/** A screen's background, in which A has just gone on a stool. */
async function behindTheScreen({
  canOpen = true,
  clock = steppedClock(startOfTests),
  store = memoryStore(),
  isFirst = true,
  standsAside = (): boolean => false,
  looked = (): void => undefined,
} = {}) {
  let ids = isFirst ? 0 : 100;
  let loads = 0;
  const counted = {
    ...store,
    load: () => {
      loads += 1;
      return store.load();
    },
  };
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  const newId = (): string => `id${++ids}`;
  let late: FactStore | null = null;
  const here = { zone: 'America/New_York', locale: 'en-GB' };
  const session = createSession({
    rules: noRules,
    loaded: loaded.value,
    notices: [],
    folder,
    store: () => (canOpen ? counted : late),
    clock,
    newId,
    here,
    soon: (work) => setImmediate(work),
  });
  const world: World = {
    clock,
    newId,
    env: {},
    platform: 'linux',
    home: folder,
    cwd: folder,
    here,
    packageFolder: folder,
    version: '0.0.0',
    interactive: true,
    print: () => undefined,
    printError: () => undefined,
  };
  const sent: string[] = [];
  const wanted: (string | null)[] = [];
  const ticker = createTicker(clock);
  if (!canOpen) writeFileSync(join(folder, 'file'), '');
  if (isFirst) {
    session.act({ do: 'add piece', name: 'Stool', schedule: smallSchedule });
    const piece = [...session.snapshot().bench.pieces.keys()][0] ?? '';
    session.act({ do: 'done', piece, part: null });
    session.act({ do: 'first stroke', piece, part: null });
  }
  const background = await startBackground({
    world,
    session,
    ticker,
    pinger: {
      send: ({ title }) => {
        sent.push(title);
        return Promise.resolve({ ways: ['bell'], failures: [] });
      },
      warmUp: () => Promise.resolve(),
    },
    awake: {
      want: (reason) => wanted.push(reason),
      state: () => ({ wanted: false, kept: false, why: '' }),
    },
    diagnostics: { record: () => undefined, missed: () => 0 },
    // A store can't be opened where a file lies in its place.
    folder: canOpen ? folder : join(folder, 'file'),
    given: canOpen ? counted : null,
    opened: (open) => {
      late = open;
    },
    standsAside,
    looked,
  });
  return { clock, store, session, ticker, background, sent, wanted, loads: () => loads };
}

describe('what goes on behind the screens', () => {
  it('sends a ping that has fallen due once, and then rests', async () => {
    const { clock, session, ticker, background, sent, loads } = await behindTheScreen();
    await settle();
    clock.pass(5 * minute);
    session.say('something');
    await settle();
    expect(sent).toHaveLength(1);
    const before = loads();
    await settle();
    expect(loads()).toBe(before);
    background.stop();
    ticker.stop();
  });

  it('keeps nothing awake once it was stopped, whatever was still to be looked at', async () => {
    const { ticker, background, session, wanted } = await behindTheScreen();
    await settle();
    expect(wanted.at(-1)).toBe('Stool, B on');
    // A look after this would find another bench, and want what spoils on it.
    session.act({ do: 'add piece', name: 'Box', schedule: smallSchedule });
    background.stop();
    ticker.stop();
    wanted.length = 0;
    await settle();
    expect(wanted).toEqual([]);
  });

  it('pings all the same where the store can not be opened, once', async () => {
    const { clock, session, ticker, background, sent } = await behindTheScreen({ canOpen: false });
    expect(session.snapshot().obstacle?.says).toMatch(/^Not /);
    await settle();
    clock.pass(5 * minute);
    session.say('something');
    await settle();
    session.say('something else');
    await settle();
    expect(sent).toHaveLength(1);
    background.stop();
    ticker.stop();
  });

  it('opens a store after all once that can be done, and says so', async () => {
    const { clock, session, ticker, background } = await behindTheScreen({ canOpen: false });
    const press = () => session.act({ do: 'add piece', name: 'Chest', schedule: smallSchedule });
    expect(press()).toMatchObject({ ok: false, says: expect.stringMatching(/^Not /) });
    rmSync(join(folder, 'file'));
    clock.pass(4 * second);
    session.say('something');
    await settle();
    expect(session.snapshot().obstacle).not.toBeNull();
    clock.pass(2 * second);
    session.say('something');
    await expect.poll(() => session.snapshot().obstacle).toBeNull();
    expect(session.snapshot().notices.at(-1)).toMatch(/^The store is open now: /);
    expect(press()).toMatchObject({ ok: true });
    await settle();
    const other = await openForWriting(join(folder, 'file'), {
      clock: { now: clock.now, today: () => '2026-11-24' },
    });
    if (!other.ok) throw new Error(other.problem.says);
    other.value.change(() => ({ append: { bench: [pieceAdded('of another')] }, result: null }));
    const isHeardOf = () => session.snapshot().bench.pieces.has('of another');
    await expect.poll(isHeardOf, { timeout: 5000 }).toBe(true);
    other.value.close();
    background.stop();
    ticker.stop();
  });

  it('leaves alone what is opened after all when it was stopped meanwhile', async () => {
    let stop = (): void => undefined;
    const looked = () => stop();
    const { clock, session, ticker, background } = await behindTheScreen({
      canOpen: false,
      looked,
    });
    rmSync(join(folder, 'file'));
    clock.pass(6 * second);
    // While that look's opening is on its way.
    stop = background.stop;
    session.say('something');
    const isOpened = () => existsSync(join(folder, 'file', 'lock.sqlite'));
    await expect.poll(isOpened, { timeout: 5000 }).toBe(true);
    await settle();
    expect(session.snapshot().obstacle).not.toBeNull();
    ticker.stop();
  });

  it('keeps nothing awake while another process sends the pings', async () => {
    let isAnotherThere = false;
    const standsAside = () => isAnotherThere;
    const { session, ticker, background, wanted } = await behindTheScreen({ standsAside });
    await settle();
    expect(wanted.at(-1)).toBe('Stool, B on');
    isAnotherThere = true;
    session.say('something');
    await settle();
    expect(wanted.at(-1)).toBeNull();
    background.stop();
    ticker.stop();
  });

  it.each([
    ['forward', hour],
    ['back', -3 * hour],
  ])('keeps a dwell as long as it is when the clock is set %s, and says so', async (way, by) => {
    const { clock, session, ticker, background, sent } = await behindTheScreen();
    await settle();
    clock.pass(4 * minute);
    clock.set(by);
    session.say('something');
    await settle();
    expect(sent).toEqual([expect.stringMatching(/B on at .*, in 1 min/)]);
    expect(session.snapshot().notices.at(-1)).toContain(`clock was set`);
    expect(session.snapshot().notices.at(-1)).toContain(way);
    clock.pass(minute);
    session.say('something');
    await settle();
    expect(sent.slice(1)).toEqual([expect.stringContaining('B on, by')]);
    background.stop();
    ticker.stop();
  });

  it('notices a clock that was set while nothing was running', async () => {
    const first = await behindTheScreen();
    await settle();
    first.background.stop();
    first.ticker.stop();
    first.clock.pass(4 * minute);
    first.clock.set(hour);
    const { clock, store } = first;
    const again = await behindTheScreen({ clock, store, isFirst: false });
    await settle();
    expect(again.session.snapshot().bench.clockSteps).toHaveLength(1);
    expect(again.sent).toEqual([expect.stringMatching(/B on at .*, in 1 min/)]);
    clock.pass(minute);
    again.session.say('something');
    await settle();
    expect(again.sent.slice(1)).toEqual([expect.stringContaining('B on, by')]);
    again.background.stop();
    again.ticker.stop();
  });
});
