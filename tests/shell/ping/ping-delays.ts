import { openForWriting, type FactStore } from '../../../src/persist/index.ts';
import { startBackground } from '../../../src/shell/background.ts';
import type { Clock } from '../../../src/shell/clock.ts';
import { newId } from '../../../src/shell/ids.ts';
import { createWaking } from '../../../src/shell/keeper/waking.ts';
import { createPinger } from '../../../src/shell/ping/pinger.ts';
import { createSession } from '../../../src/shell/session.ts';
import type { World } from '../../../src/shell/world.ts';
import { minute, type Milliseconds } from '../../../src/tracker/time/index.ts';
import { noRules } from '../../../src/tracker/trade/index.ts';

export type PingDelays = {
  /** From a ping's instant until the notifier had it. */
  readonly sent: readonly Milliseconds[];
  /** From a ping's instant until the store had on record that it went out. */
  readonly recorded: readonly Milliseconds[];
  /** Pings that did not come within two seconds. */
  readonly missing: number;
};

/** The real clock, which can be moved on as if the time between had been slept through by nobody. */
function movedClock(): Clock & { readonly moveOn: (ms: Milliseconds) => void } {
  let moved = 0;
  const real = performance.timeOrigin;
  const now = (): number => Math.floor(real + performance.now()) + moved;
  return {
    now,
    uptime: () => now() - Math.floor(real),
    bootId: 'boot',
    moveOn: (ms) => {
      moved += ms;
    },
  };
}

/** The clock is moved on to this long before each ping. */
const waitsBefore = 20;
const patience = 2000;

/**
 * Timers of a minute, one after another, told by a background as a keeper has it: a store on the disk, real timers, and a
 * notifier that does nothing.
 *
 * @param folder an empty one
 */
export async function pingDelays(folder: string, pings: number): Promise<PingDelays> {
  const clock = movedClock();
  const opened = await openForWriting(folder, {
    clock: { now: clock.now, today: () => '2026-11-24' },
  });
  if (!opened.ok) throw new Error(opened.problem.says);
  const store: FactStore = opened.value;
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  const here = { zone: 'America/New_York', locale: 'en-GB' };
  const session = createSession({
    loaded: loaded.value,
    notices: [],
    rules: noRules,
    folder,
    store: () => store,
    clock,
    newId,
    here,
    soon: (work) => setImmediate(work),
  });
  const world: World = {
    clock,
    newId,
    here,
    env: { PATH: folder },
    platform: 'linux',
    home: folder,
    cwd: folder,
    packageFolder: folder,
    version: '0.0.0',
    interactive: false,
    print: () => undefined,
    printError: () => undefined,
  };
  let due = 0;
  const sent: Milliseconds[] = [];
  const waking = createWaking(clock, () => false);
  const pinger = createPinger({
    settings: () => session.snapshot().settings,
    write: null,
    platform: 'linux',
    env: world.env,
    sendDesktop: () => {
      sent.push(clock.now() - due);
      return Promise.resolve({ ok: true });
    },
  });
  const background = await startBackground({
    world,
    session,
    ticker: waking,
    pinger,
    awake: { want: () => undefined, state: () => ({ wanted: false, kept: false, why: '' }) },
    diagnostics: { record: () => undefined, missed: () => 0 },
    folder,
    given: store,
    opened: () => undefined,
    by: 'keeper',
  });
  const recorded: Milliseconds[] = [];
  let missing = 0;
  const isRecorded = (): boolean =>
    session.loaded().pings.filter(({ kind }) => kind === 'ping-sent').length >= sent.length;
  for (let each = 1; each <= pings; each++) {
    session.act({ do: 'start timer', piece: null, label: 'clamps', ms: minute });
    due = clock.now() + minute;
    session.flush();
    clock.moveOn(minute - waitsBefore);
    session.say('a look');
    const until = performance.now() + patience;
    while ((sent.length < each || !isRecorded()) && performance.now() < until)
      await new Promise((resolve) => setTimeout(resolve, 1));
    if (sent.length < each) missing += 1;
    else recorded.push(clock.now() - due);
    const timer = session.snapshot().bench.timers.at(-1);
    if (timer !== undefined) session.act({ do: 'close timer', timer: timer.id });
    session.flush();
  }
  background.stop();
  waking.stop();
  store.close();
  return { sent, recorded, missing };
}
