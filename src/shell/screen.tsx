import { flushCompileCache } from 'node:module';
import { spawn } from 'node:child_process';
import { render } from 'ink';
import type { FactStore, OpenedStore } from '../persist/index.ts';
import { openForWriting } from '../persist/index.ts';
import { createDesk } from '../views/desk.ts';
import { DeskView, type Suspending } from '../views/desk-view.tsx';
import { shopDay } from '../views/format/index.ts';
import type { BenchPort } from '../views/port.ts';
import { chooseTheme, type Theme } from '../views/theme/index.ts';
import { createAwake } from './ping/awake.ts';
import { createDiagnostics } from './ping/diagnostics.ts';
import { createPingWatch, type PingWatch } from './ping/ping-watch.ts';
import { createPinger } from './ping/pinger.ts';
import { createClockWatch } from './clock-watch.ts';
import { movePastPieces } from './move-past.ts';
import { createPort } from './port.ts';
import { createSession } from './session.ts';
import { createTicker } from './ticker.ts';
import type { World } from './world.ts';

/** How Ctrl+Z and its signal stop this process and bring it back with the terminal as it was. */
const suspending: Suspending = {
  stop: async () => {
    process.kill(process.pid, 'SIGSTOP');
    await new Promise((resolve) => setTimeout(resolve, 0));
  },
  onSignal: (listener) => {
    process.on('SIGTSTP', listener);
    return () => process.off('SIGTSTP', listener);
  },
};

export type ScreenOptions = {
  readonly world: World;
  /** The store as a command reads it; the part that writes is loaded after the first frame. */
  readonly opened: OpenedStore;
  /** A store that is there already, for the demo. */
  readonly store?: FactStore;
  /** Runs the demo in place of this screen; offered while the bench is empty. */
  readonly demo?: () => Promise<number>;
};

/**
 * Runs the screens in the terminal until they are left.
 * @returns the exit code.
 */
export async function runScreen({
  world,
  opened,
  store: given,
  demo,
}: ScreenOptions): Promise<number> {
  const { clock, newId, env, platform, here } = world;
  const began = clock.now();
  let store: FactStore | null = given ?? null;
  const after: { run: (() => Promise<number>) | null } = { run: null };
  const session = createSession({
    loaded: opened,
    notices: opened.notices.map(({ says, todo }) => `${says} ${todo}`),
    folder: opened.folder,
    store: () => store,
    clock,
    newId,
    here,
    // React has written the frame by the time an immediate runs.
    soon: (work) => setImmediate(work),
  });
  const ticker = createTicker(clock);
  let chosen: { readonly settings: unknown; readonly theme: Theme } | null = null;
  const theme = (): Theme => {
    const { settings } = session.snapshot();
    if (chosen?.settings !== settings) chosen = { settings, theme: chooseTheme(settings, env) };
    return chosen.theme;
  };
  const pinger = createPinger({
    settings: () => session.snapshot().settings,
    write: (bytes) => void process.stdout.write(bytes),
    platform,
    env,
    onNotice: session.say,
  });
  const diagnostics = createDiagnostics({ folder: opened.folder });
  const awake = createAwake({ platform, env, spawn });
  const port: BenchPort = {
    ...createPort({ session, world, store: () => store, openDemo: demo && (() => leaveFor(demo)) }),
    acknowledge: (claim) => {
      session.acknowledge(claim);
      diagnostics.record({ at: clock.now(), what: 'acknowledged', claim });
    },
  };
  const leaveFor = (next: () => Promise<number>): void => {
    after.run = next;
    app.unmount();
  };
  const desk = createDesk({ port, ticks: ticker, theme, leave: () => app.unmount() });
  const app = render(<DeskView desk={desk} theme={theme} suspending={suspending} />, {
    alternateScreen: true,
    incrementalRendering: true,
    maxFps: 120,
    exitOnCtrlC: true,
    patchConsole: true,
    interactive: true,
  });

  let watch: PingWatch | null = null;
  const clockWatch = createClockWatch(clock);
  const look = (): void => {
    if (watch === null) return;
    const stepped = clockWatch.look();
    if (stepped !== null) session.act({ do: 'note clock step', byMs: stepped });
    session.flush();
    ticker.wakeAt(watch.look());
    const state = awake.state();
    session.setAwake(state.wanted ? { kept: state.kept, says: state.why } : null);
  };
  const stops: (() => void)[] = [];

  const beginWriting = async (): Promise<void> => {
    await app.waitUntilRenderFlush();
    if (store === null) {
      const today = () => shopDay(clock.now(), session.snapshot().shop.zone);
      const result = await openForWriting(opened.folder, { clock: { now: clock.now, today } });
      if (!result.ok) {
        session.obstruct(result.problem);
        return;
      }
      store = result.value;
    }
    const open = store;
    movePastPieces(open, session.snapshot().shop.zone);
    session.reload();
    for (const { says, todo } of open.notices()) session.say(`${says} ${todo}`);
    session.flush();
    diagnostics.record({ at: clock.now(), what: 'began', by: 'screen', pid: process.pid });
    watch = createPingWatch({
      store: open,
      clock,
      newId,
      pinger,
      awake,
      keepAwake: () => session.snapshot().settings.awake,
      diagnostics,
      shop: () => session.snapshot().shop,
      sense: () => session.snapshot().sense,
      since: began,
    });
    stops.push(
      open.watch(() => {
        session.reload();
        look();
      }),
    );
    stops.push(ticker.subscribe(look));
    stops.push(session.subscribe(() => setImmediate(look)));
    look();
    flushCompileCache();
    await pinger.warmUp();
  };
  void beginWriting().catch((error: unknown) =>
    session.say(`Not opened for writing: ${String(error)}`),
  );

  const endBySignal = (code: number) => (): void => {
    process.exitCode = code;
    app.unmount();
  };
  process.once('SIGTERM', endBySignal(143));
  process.once('SIGHUP', endBySignal(129));

  try {
    await app.waitUntilExit();
  } finally {
    for (const stop of stops) stop();
    ticker.stop();
    awake.want(null);
    if (watch !== null)
      diagnostics.record({ at: clock.now(), what: 'ended', by: 'screen', pid: process.pid });
    session.flush();
    store?.close();
  }
  const { obstacle } = session.snapshot();
  if (obstacle !== null) process.stderr.write(`${obstacle.says} ${obstacle.todo}\n`);
  if (after.run !== null) return after.run();
  return typeof process.exitCode === 'number' ? process.exitCode : 0;
}
